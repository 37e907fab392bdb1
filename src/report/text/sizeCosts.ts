/** What a size is against another one, in the words of a builder: what it costs and what it saves. */
import { capital, plainText } from '../../words/plainText.js';
import type { ConstraintCost, SizeChoice, SizeResult } from '../../study/size/size.js';
import type { ConstraintKey } from '../../study/size/constraints.js';
import { amountApart, paybackWords } from '../../study/compare/paybackWords.js';
import { paybackNumber, type Payback } from '../../study/costs.js';
import { leastDifference } from '../../study/quantities.js';
import { format, type UnitSystem } from '../../units/index.js';
import { listed } from '../../units/listed.js';

/**
 * Shares and amounts below which a difference is none that a builder sees: of wood, wind and draft; of tube [m], [kg].
 */
const NONE = { wood: 0.03, swing: 0.05, draft: 0.1, length: 0.0127, steel: 0.5 } as const;

type Sized = Pick<SizeChoice, 'weighed' | 'checks'> & { height_m: number };

/** What one size costs against another, and what it saves. */
export function against(one: Sized, other: Sized, system: UnitSystem): { costs: string[]; saves: string[] } {
  const [costs, saves]: [string[], string[]] = [[], []];
  const tell = (more: number | null, share: number, words: (side: string) => string, worse: [string, string]) => {
    if (more === null || Math.abs(more) <= share) return;
    (more > 0 ? costs : saves).push(words(more > 0 ? worse[0] : worse[1]));
  };
  const fails = ({ checks }: Sized) => checks.weather.filter(({ works }) => !works).map(({ words }) => words);
  const [here, there] = [fails(one), fails(other)];
  if (here.length > there.length) costs.push(`that it fails in ${listed(here)}`);
  const [a, b] = [one.weighed, other.weighed];
  const ratio = (x: number | null, y: number | null) => (x === null || y === null ? null : x / y - 1);
  const percent = (share: number) => `${Math.round(100 * Math.abs(share))} %`;
  const wood = ratio(a.wood_kg_per_s, b.wood_kg_per_s);
  tell(
    wood,
    NONE.wood,
    (side) =>
      `${format('massFlow', Math.abs(a.wood_kg_per_s! - b.wood_kg_per_s!), system, { digits: 2 })} ${side} wood while it holds (${percent(wood!)})`,
    ['more', 'less'],
  );
  const swing = ratio(a.windSwing, b.windSwing);
  tell(swing, NONE.swing, (side) => `a fire that the wind moves ${side} (${percent(swing!)})`, ['more', 'less']);
  const draft = ({ checks }: Sized) => checks.hold?.stackBase_Pa ?? null;
  const pull = ratio(draft(one), draft(other));
  tell(
    pull === null ? null : -pull,
    NONE.draft,
    (side) =>
      `${format('pressure', Math.abs(draft(one)! - draft(other)!), system, { digits: 1 })} ${side} draft while it holds`,
    ['less', 'more'],
  );
  const longer = one.height_m - other.height_m;
  tell(longer, NONE.length, (side) => `${format('length', Math.abs(longer), system, { digits: 2 })} ${side} of stack`, [
    'more',
    'less',
  ]);
  const heavier = a.stack_kg - b.stack_kg;
  tell(
    heavier,
    NONE.steel,
    (side) => `${format('mass', Math.abs(heavier), system, { digits: 2 })} ${side} steel in it`,
    ['more', 'less'],
  );
  return { costs, saves };
}

/**
 * What one size costs against another in money, as a clause that follows a clause; empty where the design has no
 * prices, or there is nothing to tell.
 */
export function inMoney(
  one: Pick<SizeChoice, 'money'>,
  other: Pick<SizeChoice, 'money'>,
  payback: Payback | null,
  { design, wanted }: Pick<SizeResult, 'design' | 'wanted'>,
  system: UnitSystem,
): string {
  const apart = (key: 'build' | 'cook') => () =>
    amountApart(one.money[key]!, other.money[key]!, design.prices!.currency, system);
  if (payback && paybackNumber(payback) !== null) {
    return `; ${paybackWords(payback, { build: apart('build'), cook: apart('cook'), cook_s: wanted.cook_s })}`;
  }
  // a fire that holds is lacking, or the price of wood
  const [build, from] = [one.money.build, other.money.build];
  if (payback || build === null || from === null || Math.abs(build - from) <= leastDifference('money', from)) return '';
  return `; in money: ${apart('build')()} ${build > from ? 'more' : 'less'} to build`;
}

/** Something that is asked for, as the subject of a sentence. */
export function constraintWords(
  { design }: Pick<SizeResult, 'design'>,
  key: ConstraintKey,
  system: UnitSystem,
): string {
  const { stack, onHand = [] } = design.size!;
  const from = { lid: 'over the lid', head: 'over a head', ground: 'above the ground' }[stack?.over ?? 'lid'];
  switch (key) {
    case 'least':
      return `a stack that ends at least ${format('length', stack!.least!, system)} ${from}`;
    case 'most':
      return `a stack that ends at most ${format('length', stack!.most!, system)} ${from}`;
    case 'shapes':
      return `${stack!.shapes![0]} tube alone`;
    case 'onHand':
      return onHand.length > 1
        ? `a stack from the ${onHand.length} tubes on hand`
        : `a stack from the ${plainText(onHand[0].name)} on hand`;
    default:
      return `keeping the ${key} as drawn`;
  }
}

/** What each thing asked for costs, a sentence each; those that cost nothing together. */
export function constraintLines(
  result: SizeResult,
  nameOf: (choice: SizeChoice) => string,
  system: UnitSystem,
): string[] {
  const { constraints, choices, chosen } = result;
  const best = choices[0] as SizeChoice | undefined;
  const free = constraints.filter(({ binds }) => !binds).map(({ key }) => constraintWords(result, key, system));
  const lines = constraints.flatMap(({ key, without, payback }: ConstraintCost) => {
    if (!without) return [];
    const words = capital(constraintWords(result, key, system));
    if (chosen === null || !best)
      return [`${words} leaves nothing that keeps within every limit. Without it: ${nameOf(without)}.`];
    const { costs, saves } = against(
      { ...best, height_m: best.stack.height_m },
      { ...without, height_m: without.stack.height_m },
      system,
    );
    const cost = costs.length > 0 ? `costs ${listed(costs)}` : 'costs next to nothing';
    const saved = saves.length > 0 ? `, and buys ${listed(saves)}` : '';
    const money = inMoney(best, without, payback, result, system);
    return [`${words} ${cost}${saved}${money}. Without it: ${nameOf(without)}.`];
  });
  if (free.length === 0) return lines;
  const [cost, them] = free.length === 1 ? ['costs', 'it'] : ['cost', 'them'];
  return [
    ...lines,
    chosen === null
      ? `Nothing fits without one of these either: ${listed(free)}.`
      : `${capital(listed(free))} ${cost} nothing: the same would be chosen without ${them}.`,
  ];
}
