import type { Design } from '../design/design.js';
import type { Fitted, FittedValue } from '../design/fitted.js';
import type { FittedCook, FittedParameter } from './fitResult.js';
import type { FitParameter } from './parameters.js';
import type { Posterior } from './posterior.js';

/** What was fitted for one day alone, and is of no use to another. */
const OF_THE_DAY = ['site.wind'];

/** What a fit found, as another design can name it; an earlier fit that the design rests on goes into it. */
export function fittedOf(
  design: Design,
  parameters: readonly FitParameter[],
  posterior: Posterior,
  cooks: readonly FittedCook[],
): Fitted {
  const logs = cooks.map((cook) => {
    const held = cook.channels.reduce((sum, { heldReadings }) => sum + heldReadings, 0);
    const square = cook.channels.reduce((sum, c) => sum + c.heldReadings * (c.heldBack.after ?? 0) ** 2, 0);
    return {
      name: cook.name,
      hash: cook.hash,
      design: design.name,
      fitted_s: cook.fittedTo_s - cook.from_s,
      readings: cook.channels.reduce((sum, { fittedReadings }) => sum + fittedReadings, 0),
      error_K: held > 0 ? Math.sqrt(square / held) : null,
    };
  });
  const carried = parameters.flatMap(({ unknown }, k) => (OF_THE_DAY.includes(unknown.path) ? [] : [k]));
  const found = carried.map((k) => valueOf(design, parameters[k].unknown.distribution, posterior.parameters[k]));
  const earlier = design.fitted;
  // what an earlier fit told of parts that this design does not have goes on unchanged
  const kept = (earlier?.values ?? []).flatMap(({ own, path }, i) =>
    own === null && !found.some((each) => each.path === path) ? [i] : [],
  );
  return {
    logs: [...(earlier?.logs ?? []), ...logs],
    values: [...found, ...kept.map((i) => plain(earlier!.values[i]))],
    correlation: [
      ...carried.map((k) => [...carried.map((j) => posterior.correlation[k][j]), ...kept.map(() => 0)]),
      ...kept.map((i) => [...found.map(() => 0), ...kept.map((j) => earlier!.correlation[i][j])]),
    ],
  };
}

function plain({ path, scale, value, low, high, was }: FittedValue): FittedValue {
  return { path, scale, value, low, high, was };
}

/** Factors multiply up over fits in a row; what the first of them started from stays. */
function valueOf(design: Design, distribution: string, found: FittedParameter): FittedValue {
  const { path, before, value, low, high } = found;
  const earlier = design.fitted?.values.find((each) => each.path === path && each.own !== null);
  if (distribution !== 'log-triangular') return { path, scale: 'is', value, low, high, was: earlier?.was ?? before };
  const factor = (earlier?.value ?? 1) / before;
  return {
    path,
    scale: 'times',
    value: value * factor,
    low: low * factor,
    high: high * factor,
    was: earlier?.was ?? before,
  };
}
