import { balanceWords } from '../../words/balanceWords.js';
import { gaugeLabel } from '../../words/labels.js';
import { plainText } from '../../words/plainText.js';
import type { Design } from '../../design/design.js';
import type { CookResult } from '../../study/events/cook.js';
import { doorwayOf } from '../../study/events/door.js';
import type { UnitSystem } from '../../units/index.js';
import { csvOf } from '../csv.js';
import { curveCells } from '../curveCells.js';
import { version } from '../../version.js';
import { CAUTIONS } from '../../words/cautions.js';
import { sayIn, type Say } from '../../words/quantity.js';
import { restsOn } from '../../words/restsOn.js';
import { table } from './table.js';
import { bullet, heading, paragraph } from './paragraphs.js';

/** A cook's day in words and tables. */
export function cookText(design: Design, cook: CookResult, system: UnitSystem): string {
  const say = sayIn(system);
  const { band, soak, loading } = design.cook!;
  const target = say('temperature', design.fire.target);
  const gauge = gaugeLabel(design.gauge);
  const headline =
    `Lit with ${say('mass', cook.coals_kg, { digits: 2 })} of charcoal, the ${gauge} first reads ${target} after ${say('time', cook.reached_s)}. ` +
    `The day takes ${cook.splits} splits of ${say('mass', cook.split_kg, { digits: 2 })}, ${say('mass', cook.wood_kg, { digits: 2 })} of wood, ${cook.splitsToReach} of them until then. ` +
    `From loading to the last wood it reads from ${say('temperature', cook.lowest_K)} to ${say('temperature', cook.highest_K)}, and within ${say('temperatureDifference', band)} of ${target} ` +
    `for ${say('time', cook.inBand_s)}, ${say('share', cook.inBand_share)} of the time. ${endWords(cook, say, band)}`;
  const marks = table(
    ['', 'after lighting'],
    cook.marks.map(({ time_s, what }) => [plainText(what), say('time', time_s)]),
    { indent: '  ' },
  );
  const { events } = design.cook!;
  const doors = [
    ...(loading > 0 || events.some((event) => event.door) ? [doorwayOf(design)] : []),
    ...(events.some((event) => event.fireboxDoor) ? [doorwayOf(design, 'firebox')] : []),
  ];
  const notes = [
    `Loading comes ${say('time', soak)} after the target is first read. The cook lays on splits as the design has it (fire.splits, fire.cook), and nobody looks while a door is open. The pit is lit with the firebox door ajar, which is not followed: cold racks, damp and wind add to the first time. How splits and coals burn are estimates.`,
    ...doors.map(
      (door) =>
        `Door: ${door.name === undefined ? 'that' : `'${plainText(door.name)}'`} of the ${door.part}, ${say('length', door.width)} wide and ${say('length', door.height)} high${door.assumed ? ' (a usual size: the design gives none)' : ''}.`,
    ),
    ...(cook.food.length > 0
      ? [
          `Food (${cook.food.map(({ name, start_K }) => `${plainText(name)} going in at ${say('temperature', start_K)}`).join(', ')}) takes heat to warm and to dry, and stays wet to the end here; it loses no weight. When it is done is not computed.`,
        ]
      : []),
    `Over the day ${balanceWords(cook)}.`,
  ];
  const measured = restsOn(design, system);
  const sections = [
    heading(`${plainText(design.name)}: the day`, { name: 'pitwright', version }),
    paragraph(headline),
    ...(measured === null ? [] : [paragraph(measured)]),
    `WHEN\n${marks}`,
    notes.map(bullet).join('\n'),
    paragraph(CAUTIONS),
  ];
  return `${sections.join('\n\n')}\n`;
}

/** How it ends. */
function endWords(cook: CookResult, say: Say, band: number): string {
  const out =
    cook.outOfBand_s === null
      ? `After the last wood it stays above ${say('temperatureDifference', band)} below the target as long as it is followed.`
      : `After the last wood it leaves that band for good ${say('time', cook.outOfBand_s)} later.`;
  const touch =
    cook.touch_s === null ? '' : ` Nothing outside burns a hand any more ${say('time', cook.touch_s)} after it.`;
  const left = ` What still glows at the end is worth ${say('mass', cook.left_kg, { digits: 2 })} of wood: ${towWords(cook, say)}`;
  return out + touch + left;
}

/** The day's curves as CSV (RFC 4180, plain ASCII). */
export function cookCsv({ curve }: CookResult, system: UnitSystem): string {
  const { thermometer_K, gas_K, steel_K } = curve;
  const temperatures = Object.entries({ thermometer: thermometer_K, gas: gas_K, steel: steel_K });
  return csvOf(
    curveCells(
      curve,
      temperatures.map(([head, kelvin]) => ({ head, kelvin })),
      system,
    ),
  );
}

/** When steel and coals let the pit be moved. */
function towWords({ touch_s, out_s }: CookResult, say: Say): string {
  const why = 'coals keep a pit from being moved or left alone long after it feels cool';
  if (touch_s === null || out_s === null) return `${why}. It is not followed until it may be towed: see cook.dieDown.`;
  const when = say('time', Math.max(touch_s, out_s));
  return `${why}. It may be towed ${when} after the last wood, steel cool to the hand and coals down to a hundredth of a split, the ash raked through and found dead.`;
}
