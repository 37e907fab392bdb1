/** The half of the evidence report that asks whether the physics is right. */
import type { HeatBalance } from '../../verify/validation/heatBalance.js';
import type { MechanismEffect } from '../../verify/validation/mechanisms.js';
import type { QuantityResult } from '../../verify/validation/summary.js';
import type { Validation } from '../../verify/validation/validation.js';
import { figure, markdownTable, ratio } from './evidenceMarkdown.js';

const percent = (share: number) => `${(100 * share).toFixed(0)} %`;

/** Bias and scatter of every measured quantity. */
export function biasTable(quantities: readonly QuantityResult[]): string {
  return markdownTable(
    [
      'experiment',
      'quantity',
      'rows counted (cases)',
      'bias',
      'scatter of the model',
      'scatter of the experiment',
      'scatter of the ratios',
      'within 20 %',
      'mean ratio of all rows',
      'bias, calorimeter as it is',
      'bias, layers where it burns',
    ],
    quantities.map(({ experiment, quantity, statistics: s, overAll, asIs, layered, rows, uncertainty }) => {
      const timed = rows.some((row) => row.computedAsIs !== undefined);
      return [
        experiment,
        quantity,
        s ? `${s.n} (${s.cases})` : '0',
        s ? (s.bias === null ? `${ratio(s.meanRatio)} (mean ratio; too scattered for a bias)` : ratio(s.bias)) : '-',
        s ? percent(s.modelDeviation) : '-',
        percent(uncertainty / 2),
        s ? percent(s.scatter) : '-',
        s ? `${s.withinFifth} of ${s.n}` : '-',
        overAll ? ratio(overAll.meanRatio) : '-',
        timed ? ratio(asIs?.bias ?? asIs?.meanRatio) : '',
        layered ? ratio(layered.bias ?? layered.meanRatio) : '',
      ];
    }),
    [3, 4, 5, 6, 8, 9, 10],
  );
}

/** Every measured row beside the computed one, a table a quantity. */
export function rowTables(quantities: readonly QuantityResult[]): string {
  return quantities
    .map((each) => {
      const timed = each.rows.some((row) => row.computedAsIs !== undefined);
      const both = each.rows.some((row) => row.mixed !== undefined);
      const burning = each.rows.some((row) => row.layered !== undefined);
      const head = [
        'row',
        'measured',
        'computed',
        'ratio',
        ...(timed ? ['computed, calorimeter as it is', 'ratio'] : []),
        ...(both ? ['computed, gas mixed over the height', 'ratio'] : []),
        ...(burning ? ['computed, layers where it burns', 'ratio'] : []),
        'not counted because',
      ];
      const rows = each.rows.map((row) => [
        `\`${row.id}\``,
        figure(row.measured),
        figure(row.computed),
        ratio(row.computed / row.measured),
        ...(timed ? [figure(row.computedAsIs), ratio(row.computedAsIs! / row.measured)] : []),
        ...(both ? [figure(row.mixed!), ratio(row.mixed! / row.measured)] : []),
        ...(burning ? [figure(row.layered!), ratio(row.layered! / row.measured)] : []),
        row.leftOut,
      ]);
      const unit = each.unit === '-' ? '' : ` [${each.unit}]`;
      const title = `#### ${each.experiment}: ${each.quantity}${unit}`;
      return `${title}\n\nMeasured to within ${percent(each.uncertainty)} (${each.uncertaintySource}).\n\n${markdownTable(
        head,
        rows,
        head.slice(1, -1).map((_, n) => n + 1),
      )}`;
    })
    .join('\n\n');
}

/** What each part of the model does to the errors, changed alone. */
export function mechanismTable(mechanisms: readonly MechanismEffect[]): string {
  const signed = (value: number | null) =>
    value === null ? '-' : `${value < 0 ? '-' : '+'}${Math.abs(value).toFixed(3)}`;
  return markdownTable(
    [
      'changed alone',
      'rooms: flow out',
      'flow in',
      'rows within 20 %: out, in',
      'neutral plane, computed less measured, share of the opening',
      'upper gas rise',
      'bare steel room: steel at 300 s',
      'at 1200 s',
      'gas rise',
      'plate thermometers',
      'wool inside: plate thermometers',
    ],
    mechanisms.map((m) => [
      m.name,
      ratio(m.outflow),
      ratio(m.inflow),
      `${m.flowsWithinFifth.outflow}, ${m.flowsWithinFifth.inflow}`,
      signed(m.neutral),
      ratio(m.upperGas),
      ratio(m.steelAt300),
      ratio(m.steelAt1200),
      ratio(m.gasMean),
      ratio(m.probes),
      ratio(m.woolProbes),
    ]),
    [1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
  );
}

/** Where the heat of the measured steel room went, moment by moment. */
export function balanceTable(balances: readonly HeatBalance[]): string {
  const kilowatt = (watt: number) => (watt / 1e3).toFixed(0);
  return markdownTable(
    [
      'at [s]',
      'released, hood [kW]',
      'hot gas, hood [kW]',
      'the walls at the measured plate temperatures radiate [kW]',
      'and give to the air [kW]',
      'the model sends through the walls [kW]',
      'and out with the gas [kW]',
      'emissivity outside that would balance',
    ],
    balances.map((b) => [
      figure(b.time),
      kilowatt(b.released),
      kilowatt(b.convective),
      kilowatt(b.wallsRadiate),
      kilowatt(b.wallsConvect),
      kilowatt(b.modelWalls),
      kilowatt(b.modelGas),
      ratio(b.balancingEmissivity),
    ]),
    [0, 1, 2, 3, 4, 5, 6, 7],
  );
}

/** When each burner was lit and shut on the clock of its table. */
export function fireLines({ fires }: Validation): string {
  return fires
    .map(({ test, ignition, shut }) => {
      const end = shut === null ? 'outlasts the table' : `shut at ${shut.toFixed(0)} s`;
      return `${test}: lit at ${ignition.toFixed(0)} s, ${end}`;
    })
    .join('; ');
}
