/**
 * Steel pipe by nominal size (NPS): outside diameter and walls in inches.
 *
 * ASME B36.10M, Welded and Seamless Wrought Steel Pipe. Seen in print: sizes 3 to 8 and 16 to 36, schedules STD, XS (16
 * and up), 10 and 20 (16 and up). From memory: sizes 10, 12, 14; XS below 16; schedule 20 below 16; schedules 30 and
 * 40.
 */
export interface PipeSize {
  /** nominal size, NPS */
  nominal: number;
  /** outside diameter [m] */
  diameter: number;
  /** wall by schedule [m] */
  walls: Readonly<Record<string, number>>;
}

const INCH = 0.0254;

const size = (nominal: number, diameter: number, walls: Record<string, number>): PipeSize => ({
  nominal,
  diameter: diameter * INCH,
  walls: Object.fromEntries(Object.entries(walls).map(([schedule, wall]) => [schedule, wall * INCH])),
});

/** Steel pipe by nominal size (ASME B36.10M). */
export const PIPES: readonly PipeSize[] = [
  size(3, 3.5, { std: 0.216, xs: 0.3, '40': 0.216 }),
  size(4, 4.5, { std: 0.237, xs: 0.337, '40': 0.237 }),
  size(5, 5.563, { std: 0.258, xs: 0.375, '40': 0.258 }),
  size(6, 6.625, { std: 0.28, xs: 0.432, '40': 0.28 }),
  size(8, 8.625, { std: 0.322, xs: 0.5, '20': 0.25, '40': 0.322 }),
  size(10, 10.75, { std: 0.365, xs: 0.5, '20': 0.25, '40': 0.365 }),
  size(12, 12.75, { std: 0.375, xs: 0.5, '20': 0.25, '40': 0.406 }),
  size(14, 14, { std: 0.375, xs: 0.5, '10': 0.25, '20': 0.312, '30': 0.375, '40': 0.438 }),
  size(16, 16, { std: 0.375, xs: 0.5, '10': 0.25, '20': 0.312, '30': 0.375, '40': 0.5 }),
  size(18, 18, { std: 0.375, xs: 0.5, '10': 0.25, '20': 0.312, '30': 0.438, '40': 0.562 }),
  size(20, 20, { std: 0.375, xs: 0.5, '10': 0.25, '20': 0.375, '30': 0.5, '40': 0.594 }),
  size(22, 22, { std: 0.375, xs: 0.5, '10': 0.25, '20': 0.375, '30': 0.5 }),
  size(24, 24, { std: 0.375, xs: 0.5, '10': 0.25, '20': 0.375, '30': 0.562, '40': 0.688 }),
  size(26, 26, { std: 0.375, xs: 0.5, '10': 0.312, '20': 0.5 }),
  size(28, 28, { std: 0.375, xs: 0.5, '10': 0.312, '20': 0.5, '30': 0.625 }),
  size(30, 30, { std: 0.375, xs: 0.5, '10': 0.312, '20': 0.5, '30': 0.625 }),
  size(36, 36, { std: 0.375, xs: 0.5, '10': 0.312, '20': 0.5, '30': 0.625, '40': 0.75 }),
];

const SCHEDULE_WORDS: Readonly<Record<string, string>> = {
  std: 'std',
  standard: 'std',
  'standard weight': 'std',
  xs: 'xs',
  xh: 'xs',
  'extra strong': 'xs',
  'extra heavy': 'xs',
};

/** Schedule key of a written schedule ('standard wall', 'schedule 20', 'sch. 40', 'xs'), or undefined. */
export function scheduleKey(written: string): string | undefined {
  const tidy = written
    .toLowerCase()
    .replace(/\bwall\b/g, '')
    .replace(/^\s*(schedule|sched\.?|sch\.?)\s*/, '')
    .trim();
  return SCHEDULE_WORDS[tidy] ?? (/^\d+$/.test(tidy) ? tidy : undefined);
}
