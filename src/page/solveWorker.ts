/** Runs in a worker: the same estimate as the command's, so that the page stays free to answer the hand. */
import { studyOption, USUAL_SETTINGS } from '../study/compare/studyOption.js';
import { cooked } from '../study/events/cooked.js';
import { estimate, type Further } from '../study/estimate/estimate.js';
import { seededRandom } from '../study/spread/random.js';
import {
  planSpread,
  runSpreadCases,
  summariseSpread,
  type Spread,
  type SpreadCase,
} from '../study/spread/uncertainty.js';
import type { AsideReply, AsideRequest, SolveReply, SolveRequest } from './protocol.js';
import { serve } from './serve.js';

/**
 * Cases of the page's spread study, the command's usual seed, and cases worked out at a time: the worker is free
 * between them.
 */
const CASES = 40;
const SEED = 1;
const AT_A_TIME = 4;

serve<SolveRequest | AsideRequest, SolveReply | AsideReply>('solver', (request) =>
  'kind' in request ? aside(request) : solve(request),
);

function solve({ id, option, design, steadyOnly }: SolveRequest): SolveReply {
  const start = performance.now();
  const took = () => performance.now() - start;
  try {
    return { id, option, steadyOnly, result: estimate(design, { steadyOnly }), fault: null, took: took() };
  } catch (error) {
    const fault = error instanceof Error ? error.message : String(error);
    return { id, option, steadyOnly, result: null, fault, took: took() };
  }
}

/** What breaks here is left out: the answer stands without it. */
function aside(request: AsideRequest): AsideReply {
  const { round } = request;
  try {
    if (request.kind === 'spread') return { round, kind: 'spread', ...someCases(request) };
    if (request.kind === 'cook') return { round, ...cook(request) };
    const { kind, step, design, events } = request;
    const study = events ? studyOption(design, USUAL_SETTINGS) : { result: estimate(design), studies: null };
    return { round, kind, step, study, events };
  } catch {
    return { round, kind: 'fault' };
  }
}

/** Lit, fed and steered by a cook. */
function cook({ kind, design, vented }: Extract<AsideRequest, { kind: 'cook' }>) {
  let found: Further = { result: {}, warnings: [] };
  estimate(design, {
    further: (solution) => {
      found = cooked(solution, vented);
      return { result: {}, warnings: [] };
    },
  });
  return { kind, found, vented };
}

/** Some more cases; with the last of them what they all say. The same as the command's study of so many cases. */
function someCases({ base, cases: before }: Extract<AsideRequest, { kind: 'spread' }>): {
  cases: SpreadCase[];
  spread: Spread | null;
} {
  const plan = planSpread(base, { cases: CASES, seed: SEED, random: seededRandom(SEED) });
  const cases = [...before, ...runSpreadCases(plan, before.length, Math.min(CASES, before.length + AT_A_TIME))];
  return { cases, spread: cases.length < CASES ? null : summariseSpread(base, plan, cases) };
}
