import type { ChartConfiguration } from 'chart.js';

/** A chart's own title, and its second line with the names of what it shows, for those who can't see it. */
export function chartWords(config: ChartConfiguration): { title: string; description: string } {
  const { title, subtitle } = (config.options?.plugins ?? {}) as Record<string, { text?: unknown } | undefined>;
  const shown = config.data.datasets.map(({ label }) => label ?? '').filter((label) => label !== '');
  const second = String(subtitle?.text ?? '');
  return {
    title: String(title?.text ?? ''),
    description: [second, shown.length > 0 ? `Shown: ${shown.join(', ')}.` : ''].filter(Boolean).join(' '),
  };
}
