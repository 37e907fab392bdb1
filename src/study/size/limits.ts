/**
 * What a size must keep to. Bands of ours where no source is named: common practice and estimates, printed with every
 * answer.
 */
export interface Limit {
  key: LimitKey;
  words: string;
  low?: number;
  high?: number;
  /** SI unit of the value; '-' for shares, ratios and numbers of things */
  unit: '-' | 'm/s' | 'K' | 'Pa';
  source: string;
  /** warnings of an estimate that say the same */
  warnings?: readonly string[];
  /** sizes change it little or not: it is told, and rules nothing out */
  told?: true;
}

/** Limits that a size is held to. */
export type LimitKey =
  | 'air'
  | 'heat'
  | 'holdOpening'
  | 'stackSpeed'
  | 'holdStackSpeed'
  | 'intakeSpeed'
  | 'throatSpeed'
  | 'draft'
  | 'smoke'
  | 'gapSmoke'
  | 'backDraft'
  | 'settles'
  | 'soaks'
  | 'splits'
  | 'others'
  | 'bed'
  | 'paint'
  | 'covers'
  | 'steel'
  | 'carried'
  | 'relations';

const OURS = 'common practice, no source';
const PHYSICS = 'physics';
const AS_ESTIMATED = 'as an estimate warns of it: estimate or common practice';

/** Every limit, in the order of the table. */
export const LIMITS: readonly Limit[] = [
  {
    key: 'air',
    words: 'air, full fire, times what it needs',
    low: 1.5,
    unit: '-',
    source: OURS,
    warnings: ['no-air-path', 'fire-limited-by-air', 'little-air'],
  },
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
  { key: 'draft', words: 'least draft under the stack', low: 0, unit: 'Pa', source: PHYSICS },
  {
    key: 'smoke',
    words: "smoke at gaps, just lit, of the stack's",
    high: 0.01,
    unit: '-',
    source: 'estimate: less is hardly seen',
  },
  {
    key: 'gapSmoke',
    words: "smoke at one door's gaps, later on",
    high: 0.001,
    unit: '-',
    source: OURS,
    warnings: ['door-gap-smoke'],
  },
  {
    key: 'backDraft',
    words: 'openings that flow backwards',
    high: 0,
    unit: '-',
    source: PHYSICS,
    warnings: ['back-draft'],
  },
  {
    key: 'settles',
    words: 'ways in which the draft tips over',
    high: 0,
    unit: '-',
    source: PHYSICS,
    warnings: [
      'no-steady-draft',
      'draft-tips-over',
      'draft-swings',
      'chokes-at-first',
      'full-fire-falls-off',
      'another-state',
    ],
  },
  {
    key: 'soaks',
    words: 'target or soaked not within a day',
    high: 0,
    unit: '-',
    source: PHYSICS,
    warnings: ['target-not-reached', 'not-soaked-in-a-day'],
  },
  {
    key: 'splits',
    words: 'fresh splits that lack air',
    high: 0,
    unit: '-',
    source: AS_ESTIMATED,
    warnings: ['splits-limited-by-air'],
  },
  { key: 'others', words: 'other warnings', high: 0, unit: '-', source: AS_ESTIMATED },
  {
    key: 'bed',
    words: 'full fires beyond their bed',
    high: 0,
    unit: '-',
    source: OURS,
    warnings: ['fire-beyond-bed'],
    told: true,
  },
  {
    key: 'paint',
    words: 'coats too hot',
    high: 0,
    unit: '-',
    source: AS_ESTIMATED,
    warnings: ['paint-above-limit'],
    told: true,
  },
  {
    key: 'covers',
    words: 'insulation or lining too hot',
    high: 0,
    unit: '-',
    source: AS_ESTIMATED,
    warnings: ['insulation-above-limit', 'lining-above-limit'],
    told: true,
  },
  {
    key: 'steel',
    words: 'steel that scales or creeps',
    high: 0,
    unit: '-',
    source: AS_ESTIMATED,
    warnings: ['steel-above-scaling-limit', 'steel-above-creep-limit'],
    told: true,
  },
  {
    key: 'carried',
    words: 'axle, hitch or tongue out of bounds',
    high: 0,
    unit: '-',
    source: AS_ESTIMATED,
    warnings: ['axle-overloaded', 'hitch-overloaded', 'tongue-load-out-of-band'],
    told: true,
  },
  {
    key: 'relations',
    words: 'numbers outside what is known',
    high: 0,
    unit: '-',
    source: AS_ESTIMATED,
    warnings: ['biot-above-limit', 'relation-outside-range'],
    told: true,
  },
];

/** The same by their keys. */
export const LIMIT = Object.fromEntries(LIMITS.map((limit) => [limit.key, limit])) as Record<LimitKey, Limit>;

/** The limit that a warning of an estimate is of; one that no row names is of the other warnings. */
export function limitOf(code: string): LimitKey {
  return LIMITS.find(({ warnings }) => warnings?.includes(code))?.key ?? 'others';
}

/** Limits that are a count of an estimate's warnings alone. */
export const COUNTED: readonly LimitKey[] = LIMITS.slice(LIMITS.findIndex(({ key }) => key === 'settles')).map(
  ({ key }) => key,
);

/**
 * What is asked of a size beside the design itself; plain data, so that threads can share the work.
 */
export interface SizeSettings {
  /** air over what the wood needs at which the fire that holds counts as burning clean */
  cleanAir: number;
  /** throat that sizes begin with [m2]; null: the usual one */
  throat?: number | null;
}

/** Shares of the full fire that stand for the first minutes, with all steel still cold. */
export const JUST_LIT = [0.1, 0.3, 1] as const;

/** Margin from which on more of it is worth nothing: a quarter of the limit (common practice, no source). */
export const COMFORT = 0.25;

/** Part of a throat's greatest speed that a throat is chosen for: a quarter in hand. */
export const THROAT_USE = 0.8;

/** How far a size is inside one of its limits. */
export interface Margin {
  key: LimitKey;
  value: number;
  /** how far inside the limit, as a share of it: 0 on the limit, 1 twice as far, below 0 outside */
  margin: number;
}

/** Shares of which no more than `high` may be: 1 - value/high is the margin. */
const SHARES: readonly LimitKey[] = ['smoke', 'gapSmoke'];

/**
 * Distance of a value from a limit's ends, as a share of them: value/low - 1 or high/value - 1, the smaller. Where an
 * end is 0 there is no share to speak of: 1 inside, -1 outside; a share limited to `high` counts as 1 - value/high.
 */
export function marginOf(key: LimitKey, value: number): Margin {
  const { low, high } = LIMIT[key];
  let margin = Infinity;
  if (low === 0) margin = value > 0 ? 1 : -1;
  else if (low !== undefined) margin = value / low - 1;
  if (SHARES.includes(key)) margin = 1 - value / high!;
  else if (high === 0) margin = value > 0 ? -1 : 1;
  else if (high !== undefined) margin = Math.min(margin, value > 0 ? high / value - 1 : -1);
  return { key, value, margin };
}

/** The smallest of the margins that decide. */
export function scoreOf(margins: readonly Margin[]): number {
  return Math.min(...margins.filter(({ key }) => !LIMIT[key].told).map(({ margin }) => margin));
}
