/** What is warned of the air: a fire that gets too little, a bed too small, back-draft, smoke at gaps. */
import { smokeOf } from './smoke.js';
import { BED_RELEASE, bedOf } from '../../design/bed.js';
import type { Design } from '../../design/design.js';
import { amount, format, told } from '../../units/index.js';
import type { SteadyState, WarmUp, Warning, WhichFire } from './result.js';

/**
 * A door gap counts as leaking smoke when it lets out more than this share of the stack's gas: common practice, no
 * source.
 */
const SMOKE_SHARE = 1e-3;

/** Wood burns dirtily with less air than this over what it needs: common practice, no source. */
const LEAST_EXCESS_AIR = 1.5;

/**
 * A fire that burns less than this share of what is laid on, though in the end there is air for it, chokes; for this
 * long [s] it does so in many a cold pit until the stack is warm: our own choice, no source.
 */
const CHOKES = { share: 0.5, most: 300 };

/** A number below a limit, to so many figures that it is seen to be. */
function lessThan(limit: number, value: number): string {
  const text = value.toFixed(1);
  return Number(text) < limit ? text : (Math.floor(100 * value) / 100).toFixed(2);
}

/** The fire gets less air than it asks for: what holds it down and what to change. */
export function airWarnings(state: SteadyState, fire: WhichFire): Warning[] {
  const out: Warning[] = [];
  if (state.fire_W < 0.02 * state.fireAsked_W) {
    out.push({
      code: 'no-air-path',
      message:
        "next to no air gets to the fire, so it can't burn: open the intake, and see that throat and stack give the gas a way out",
      where: '',
      fire,
      value: state.fire_W,
      limits: { low: state.fireAsked_W, unit: 'W' },
    });
    return out;
  }
  if (state.limitedByAir) {
    out.push({
      code: 'fire-limited-by-air',
      message: told`air lets only ${amount('power', state.fire_W)} of the ${amount('power', state.fireAsked_W)} asked for burn: give it more intake, throat or stack, or a smaller fire`,
      where: '',
      fire,
      value: state.fire_W,
      limits: { low: state.fireAsked_W, unit: 'W' },
    });
  } else if (state.excessAirRatio > 0 && state.excessAirRatio < LEAST_EXCESS_AIR) {
    out.push({
      code: 'little-air',
      message: `the fire gets ${lessThan(LEAST_EXCESS_AIR, state.excessAirRatio)} times the air it needs; below ${LEAST_EXCESS_AIR} wood burns dirty and smoky: more intake or a taller stack (common practice, no source)`,
      where: '',
      fire,
      value: state.excessAirRatio,
      limits: { low: LEAST_EXCESS_AIR, unit: '-', source: 'common practice, no source' },
    });
  }
  return out;
}

/** Lit cold, the fire chokes for long before the draft comes: when it comes hangs on little. */
export function chokesAtFirst({ gauge_s, series }: WarmUp, { fire }: Design, { fire_W: most }: SteadyState): Warning[] {
  if (gauge_s === null) return [];
  let until = 0;
  let least = 1;
  for (let i = 0; i < series.time_s.length && series.time_s[i] < gauge_s; i++) {
    const asked = fire.heat * (1 - Math.exp(-series.time_s[i] / fire.rise));
    const share = series.fire_W[i] / Math.min(asked, most);
    if (!(share < CHOKES.share)) continue;
    until = series.time_s[i];
    least = Math.min(least, share);
  }
  if (until <= CHOKES.most) return [];
  return [
    {
      code: 'chokes-at-first',
      message: `lit cold, the fire gets too little air for the first ${format('time', until, 'shop', { digits: 2 })}, at worst enough for ${(100 * least).toFixed(0)} % of what it burns later: it smoulders until the draft comes, and when that is hangs on little: weather, plate, how it is lit. Give the gas one clear way up: throat above the intakes, stack large and tall enough`,
      where: 'warm-up',
      value: until,
      limits: { high: CHOKES.most, unit: 's' },
    },
  ];
}

/** A full fire that no bed in this box makes: more than the most that wood on a grate is told to release. */
export function bedWarnings({ fire, firebox }: Design): Warning[] {
  const { bedArea } = bedOf({ fire, firebox });
  const most = bedArea * BED_RELEASE.high;
  if (fire.heat <= most) return [];
  return [
    {
      code: 'fire-beyond-bed',
      message: told`the full fire of ${amount('power', fire.heat)} is more than a bed of ${amount('area', bedArea)} makes, at most about ${amount('power', most)} (common practice, no source): a larger firebox or grate, or a smaller fire`,
      where: '',
      fire: 'assumed fire',
      value: fire.heat,
      limits: { high: most, unit: 'W', source: 'common practice, no source' },
    },
  ];
}

/** An intake that blows out, or a throat whose gas runs back into the firebox: the pit draws the wrong way. */
export function backDraftWarnings(state: SteadyState, fire: WhichFire): Warning[] {
  return state.openings
    .filter((o) => (o.role === 'intake' || o.role === 'throat' || o.role === 'stackExit') && o.flow_kg_per_s < -1e-6)
    .map((o) => ({
      code: 'back-draft',
      message: `the ${o.name} flows the wrong way: the pit back-drafts. Raise or widen the stack, or look at wind and at how the intake is placed`,
      where: o.name,
      fire,
      value: o.flow_kg_per_s,
      limits: { low: 0, unit: 'kg/s' },
    }));
}

/** Door gaps that blow smoke out under this fire, summed by part. */
export function smokeWarnings(state: SteadyState, fire: WhichFire): Warning[] {
  const { stack, byPart } = smokeOf(state.openings);
  return [...byPart].flatMap(([part, flow]) => {
    if (flow <= SMOKE_SHARE * stack) return [];
    const share = flow < stack ? `${((100 * flow) / stack).toFixed(1)} % of the stack's` : 'more than by the stack';
    return [
      {
        code: 'door-gap-smoke',
        message: told`${amount('massFlow', flow)} of smoke (${share}) leaves by its upper gaps: close them, or give more stack`,
        where: `${part} door`,
        fire,
        value: flow,
        limits: { high: SMOKE_SHARE * stack, unit: 'kg/s', source: 'common practice, no source' },
      },
    ];
  });
}
