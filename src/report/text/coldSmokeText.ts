import { stationLabel } from '../../words/labels.js';
import { plainText } from '../../words/plainText.js';
import type { Design } from '../../design/design.js';
import type { ColdSmoke } from '../../study/events/coldSmoke.js';
import type { UnitSystem } from '../../units/index.js';
import { version } from '../../version.js';
import { CAUTIONS } from '../../words/cautions.js';
import { inAnyState } from '../../study/quantities.js';
import { sayIn, sayQuantity, type Say } from '../../words/quantity.js';
import { wordsOf } from '../../words/quantityWords.js';
import { restsOn } from '../../words/restsOn.js';
import { table } from './table.js';
import { bullet, heading, paragraph } from './paragraphs.js';

/** Whether a pit can smoke cold, and with what fire. */
export function coldSmokeText(design: Design, cold: ColdSmoke, system: UnitSystem): string {
  const say = sayIn(system);
  const { fire } = cold;
  const rows = fire
    ? [
        ['fire', `${say('power', fire.fire_W)}, ${say('massFlow', fire.wood_kg_per_s)} of wood`],
        ...(['excessAirRatio', 'stackBase_Pa', 'stackVelocity_m_per_s'] as const)
          .map(inAnyState)
          .map((quantity) => [wordsOf(quantity, 'row'), sayQuantity(say, quantity, quantity.of(fire))]),
        ...cold.stations.map(({ name, thermometer_K, under }) => [
          `${stationLabel(name)} thermometer`,
          `${say('temperature', thermometer_K)}${under ? '' : ', OVER'}`,
        ]),
      ]
    : [];
  const measured = restsOn(design, system);
  const sections = [
    heading(`${plainText(design.name)}: cold smoke`, { name: 'pitwright', version }),
    paragraph(answer(cold, design, say)),
    ...(measured === null ? [] : [paragraph(measured)]),
    ...(fire ? [`THE SMALLEST STEADY FIRE\n${table(['', ''], rows, { indent: '  ' })}`] : []),
    [
      `The ceiling of ${say('temperature', cold.ceiling_K)} is common practice, no source, unless you gave your own. Food safety sets its own rules for meat and fish held warm and unsalted: follow those.`,
      `A fire below ${say('power', cold.least_W)} is taken not to stay alight by itself (an estimate; --least changes it). A smoke generator or a smouldering tray gives less.`,
    ]
      .map(bullet)
      .join('\n'),
    paragraph(CAUTIONS),
  ];
  return `${sections.join('\n\n')}\n`;
}

function answer({ possible, why, ceiling_K, air_K, largestFire_W, fire }: ColdSmoke, design: Design, say: Say): string {
  const place = design.upright ? 'the upright' : 'the stack end (there is no upright)';
  const ceiling = say('temperature', ceiling_K);
  const day = `on a day of ${say('temperature', air_K)}`;
  if (possible) {
    const room =
      largestFire_W === null
        ? 'Even the full fire keeps it there.'
        : `Up to ${say('power', largestFire_W)}, ${say('massFlow', largestFire_W / design.wood.heat)} of wood, keep it there.`;
    return `Yes: ${place} stays under ${ceiling} ${day} with a fire of ${say('power', fire!.fire_W)}. ${room}`;
  }
  if (why === 'air-too-warm') return `No: ${day} the air alone is at the ceiling of ${ceiling} or above it.`;
  if (why === 'no-draft') {
    return `No: none of the fires tried, up to the full one, draws the right way and gets its air ${day}. Open the intakes and the damper, or raise the stack.`;
  }
  return `No: ${day} the smallest steady fire already warms ${place} over ${ceiling}. It takes a colder day, a smaller source of smoke, or a way for the smoke to cool before it gets there.`;
}
