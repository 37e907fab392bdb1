/** Less than this is told as a bound: a percentage, and a flow [kg/s]. */
const [SMALL_SHARE, SMALL_FLOW] = [1e-6, 1e-9];

/**
 * How well a run's heat and air add up.
 *
 * @example balanceWords({ energyError: 6e-7, massError_kg_per_s: 6e-13 }) gives 'the heat adds up within 0.00006 % of the fire, and
 * the air within a millionth of a gram a second'
 */
export function balanceWords(balance: { energyError: number; massError_kg_per_s: number }): string {
  const percent = Math.max(100 * balance.energyError, SMALL_SHARE).toPrecision(1);
  const flow = balance.massError_kg_per_s;
  const air = flow < SMALL_FLOW ? 'a millionth of a gram a second' : `${(1000 * flow).toPrecision(1)} g/s`;
  return `the heat adds up within ${percent} % of the fire, and the air within ${air}`;
}
