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

function answer(cold: ColdSmoke, design: Design, say: Say): string {
  const { possible, why, ceiling_K, air_K, largestFire_W, fire, inHand_K, open } = cold;
  const place = design.upright ? 'the upright' : 'the stack end (there is no upright)';
  const ceiling = say('temperature', ceiling_K);
  const day = `on a day of ${say('temperature', air_K)}`;
  const vents = `with the intakes ${say('share', open, { digits: 2 })} open`;
  const hand = say('temperatureDifference', inHand_K === null ? null : Math.abs(inHand_K), { digits: 2 });
  const small = fire ? `a fire of ${say('power', fire.fire_W)}, ${say('massFlow', fire.wood_kg_per_s)} of wood,` : '';
  if (possible) {
    const room =
      largestFire_W === null
        ? 'Even the full fire keeps it there.'
        : `Up to ${say('power', largestFire_W)}, ${say('massFlow', largestFire_W / design.wood.heat)} of wood, keep it there.`;
    return `Yes: ${vents} and ${small} ${place} stays ${hand} under ${ceiling} ${day}. ${room} ${dayWords(cold, say)}`;
  }
  if (why === 'air-too-warm')
    return `No: ${day} the air alone is at the ceiling of ${ceiling} or above it. ${dayWords(cold, say)}`;
  if (why === 'no-draft') {
    return `No: none of the fires tried, up to the full one, draws the right way and gets its air ${day}. Open the intakes and the damper, or raise the stack.`;
  }
  if (why === 'nothing-in-hand') {
    return `Hardly: ${vents} and ${small} ${place} stays only ${hand} under ${ceiling} ${day}; sun, or a fire a little larger, takes that. ${dayWords(cold, say)}`;
  }
  return `No: ${day} the smallest steady fire already warms ${place} ${hand} over ${ceiling}, ${vents}, where it stays coolest. It takes a colder day, a smaller source of smoke, or a way for the smoke to cool before it gets there. ${dayWords(cold, say)}`;
}

/** Up to what day it works. */
function dayWords({ hottestDay_K: { likely, low, high } }: ColdSmoke, say: Say): string {
  if (likely === null) return 'There is no day on which it would, down to the coldest looked at.';
  const spread =
    low === likely && high === likely
      ? ''
      : ` (${low === null ? 'none' : say('temperature', low)} to ${say('temperature', high)}, as the least fire that stays alight may be three times or half of that taken)`;
  return `The hottest day on which the ceiling is just kept is one of ${say('temperature', likely)}${spread}.`;
}
