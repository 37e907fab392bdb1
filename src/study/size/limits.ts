/** What a size must keep to. Bands of ours where no source is named: common practice and estimates, printed with every answer. */
export interface Limit {
  key: LimitKey;
  words: string;
  low?: number;
  high?: number;
  /** SI unit of the value; '-' for shares and ratios */
  unit: '-' | 'm/s' | 'K';
  source: string;
}

export type LimitKey =
  | 'air'
  | 'heat'
  | 'holdOpening'
  | 'stackSpeed'
  | 'holdStackSpeed'
  | 'intakeSpeed'
  | 'throatSpeed'
  | 'smoke'
  | 'backDraft';

const OURS = 'common practice, no source';

export const LIMITS: readonly Limit[] = [
  { key: 'air', words: 'air, full fire, times what it needs', low: 1.5, unit: '-', source: OURS },
  {
    key: 'heat',
    words: 'full fire reaches, times the target',
    low: 1,
    unit: '-',
    source: 'follows from the target; both over outdoor air',
  },
  { key: 'holdOpening', words: 'intakes open while holding', low: 0.15, high: 0.7, unit: '-', source: OURS },
  { key: 'stackSpeed', words: 'stack speed, full fire', low: 1, high: 4, unit: 'm/s', source: OURS },
  {
    key: 'holdStackSpeed',
    words: 'stack speed, holding',
    low: 0.3,
    unit: 'm/s',
    source: 'estimate: slower, and cold air falls in at the top',
  },
  { key: 'intakeSpeed', words: 'intake speed, full fire', high: 3, unit: 'm/s', source: OURS },
  {
    key: 'throatSpeed',
    words: 'throat speed, full fire',
    high: 1.2,
    unit: 'm/s',
    source: 'estimate: faster, and the throat takes the draft and throws a jet',
  },
  {
    key: 'smoke',
    words: "smoke at gaps, just lit, of the stack's",
    high: 0.01,
    unit: '-',
    source: 'estimate: less is hardly seen',
  },
  { key: 'backDraft', words: 'openings that flow backwards', high: 0, unit: '-', source: 'physics' },
];

export const LIMIT = Object.fromEntries(LIMITS.map((limit) => [limit.key, limit])) as Record<LimitKey, Limit>;

/**
 * What is asked of a size beside the design itself; plain data, so that threads can share the work.
 */
export interface SizeSettings {
  /** air over what the wood needs at which the fire that holds counts as burning clean */
  cleanAir: number;
}

/** Shares of the full fire that stand for the first minutes, with all steel still cold. */
export const JUST_LIT = [0.1, 0.3, 1] as const;

/** Margin from which on more of it is worth nothing: a quarter of the limit (common practice, no source). */
export const COMFORT = 0.25;

/** Part of a throat's greatest speed that a throat is chosen for: a quarter in hand. */
export const THROAT_USE = 0.8;

export interface Margin {
  key: LimitKey;
  value: number;
  /** how far inside the limit, as a share of it: 0 on the limit, 1 twice as far, below 0 outside */
  margin: number;
}

/**
 * Distance of a value from a limit's ends, as a share of them: value/low - 1 or high/value - 1, the smaller. Where the high end
 * is 0 there is no share to speak of: 1 inside, -1 outside; a share limited to `high` counts as 1 - value/high.
 */
export function marginOf(key: LimitKey, value: number): Margin {
  const { low, high } = LIMIT[key];
  let margin = Infinity;
  if (low !== undefined) margin = value / low - 1;
  if (key === 'smoke') margin = 1 - value / high!;
  else if (high === 0) margin = value > 0 ? -1 : 1;
  else if (high !== undefined) margin = Math.min(margin, value > 0 ? high / value - 1 : -1);
  return { key, value, margin };
}
