import { balanceWords } from '../../words/balanceWords.js';
import { byHeightData, evennessText, placesData } from '../heights.js';
import { outsideLabel } from '../../words/labels.js';
import type { EstimateResult, SteadyState } from '../../study/estimate/result.js';
import type { UnitSystem } from '../../units/index.js';
import { carrySentences, handlesData, HANDS_NOTE, surfacesData } from '../carryData.js';
import { CAUTIONS, PLATE_AND_LOSS, SOAKED_MEANS } from '../../words/cautions.js';
import { headline } from '../../words/headline.js';
import { plainTexts } from '../../words/plainText.js';
import { sayAlone, sayIn, type Say } from '../../words/quantity.js';
import { byRank, rankOf } from '../../words/warningRank.js';
import { warningWords, whereWords } from '../../words/warningWords.js';
import { causesText, missingText, sharesText, spreadTable } from './spreadText.js';
import {
  airData,
  bothTemperaturesData,
  MAIN_AIR,
  unknownsData,
  fittedNote,
  heatLossData,
  liningsData,
  openingsData,
  temperatureData,
  warmUpData,
  weightsData,
} from '../resultData.js';
import { ventCurveData, ventNote, ventTurnText } from '../ventData.js';
import { textTable } from './table.js';
import { weightText } from './weightText.js';
import { heading, note, paragraph, section, warningLines } from './paragraphs.js';

/**
 * The result as plain text for a builder, at most 98 columns wide but for names: the answer, what to mend,
 * temperatures, heat and air; in full every table.
 *
 * @param system shop units with SI beside them in tables, or SI alone
 */
export function estimateText(result: EstimateResult, system: UnitSystem, { full = false } = {}): string {
  const answer = [...headline(result, system), ...carrySentences(result, system)];
  const sections = [
    title(result),
    answer.map(paragraph).join('\n'),
    ...spreadSections(result, system),
    warningSection(result, full),
    ...(full ? everything(result, system) : essentials(result, system)),
    paragraph(CAUTIONS),
  ];
  return `${sections.join('\n\n')}\n`;
}

function spreadSections(result: EstimateResult, system: UnitSystem): string[] {
  if (!result.spread) return [];
  const { cases, seed } = result.spread;
  const missing = missingText(result);
  const causes = causesText(result, system);
  return [
    section(
      `HOW SURE: ${cases} cases, every estimate that --full lists drawn from its spread (seed ${seed})`,
      spreadTable(result, system),
      note(
        'A tenth of the cases lie below the range, a tenth above it. What the model itself leaves out is not in it.',
      ),
      ...splitNotes(result),
      ...(missing ? [note(missing)] : []),
    ),
    section(
      'WHAT MATTERS MOST, as the share of the spread that an unknown makes',
      ...(causes === null
        ? [note('Too few cases to tell: ask for more of them.')]
        : [
            causes,
            note(
              `Shares by rank regression (squared coefficients), ${sharesText(result)}. Behind them: the mean over the fifth of ` +
                'the cases where the unknown is lowest -> where it is highest.',
            ),
          ]),
    ),
  ];
}

/** In how many cases a cook was followed. */
function splitNotes({ spread }: EstimateResult): string[] {
  const followed = spread?.numbers.find(({ cases }) => cases !== undefined)?.cases;
  return followed === undefined
    ? []
    : [
        note(
          `Splits, all of one weight, are followed in ${followed} of the cases; how they flame off and glow, what they leave in coals and how long the firebox door stands open for one are drawn there too.`,
        ),
      ];
}

/** What to mend, gravest first; in full each place and fire by itself. */
function warningSection({ warnings, design }: EstimateResult, full: boolean): string {
  if (warnings.length === 0) return 'WARNINGS: none, nothing found that needs mending.';
  const told = full
    ? [...warnings]
        .sort((a, b) => byRank(rankOf(a), rankOf(b)))
        .map((each) => ({ where: whereWords(each, design), message: each.message }))
    : warningWords(warnings, design);
  return section('WARNINGS, gravest first', warningLines(told));
}

/** What is read every time: temperatures, heat and air. */
function essentials(result: EstimateResult, system: UnitSystem): string[] {
  const { steady, assumed } = result;
  if (!steady && !assumed) return [section('WEIGHTS', textTable(weightsData(result, system)))];
  const target = sayAlone(system)('temperature', result.design.fire.target);
  const head = steady
    ? `TEMPERATURES holding ${target}${assumed ? ', and what thermometers read under the full fire' : ''}`
    : 'TEMPERATURES under the full fire, settled';
  return [
    section(
      head,
      textTable(bothTemperaturesData(result, system)),
      note(`Hottest outside: ${hottestWords((steady ?? assumed)!, sayAlone(system))}.`),
    ),
    section('WHERE THE HEAT GOES', textTable(heatLossData(result, system))),
    section(
      'AIR AND DRAFT',
      textTable(airData(result, system, MAIN_AIR)),
      note('--full adds warm-up, heights, openings, weights, hands, trailer, estimates and balances.'),
    ),
  ];
}

/** Every table there is. */
function everything(result: EstimateResult, system: UnitSystem): string[] {
  const { design, steady, assumed, warmUp } = result;
  const say = sayIn(system);
  const target = say('temperature', design.fire.target);
  const fitted = fittedNote(result);
  const sections: string[] = [];
  if (warmUp) {
    sections.push(
      section(
        'WARM-UP with the full fire up to the target, then with just what holds it',
        textTable(warmUpData(result, system)),
        note('The first time is a lower bound for this fire: cold racks and food, and a slow thermometer add to it.'),
        note(SOAKED_MEANS),
      ),
    );
  }
  if (steady) {
    const fire = `${say('power', steady.fire_W)}, ${say('massFlow', steady.wood_kg_per_s)} of wood`;
    sections.push(
      section(`TEMPERATURES holding ${target}: ${fire}`, textTable(temperatureData(steady, design.gauge, system))),
    );
    if (steady.places.length > 0) {
      const even = evennessText(steady, system);
      sections.push(
        section(
          'WHERE IT COOKS while the thermometer holds',
          textTable(placesData(steady, design.gauge, system)),
          ...(even === '' ? [] : [note(even)]),
        ),
      );
    }
    const hot = `Hottest outside: ${hottestWords(steady, say)}.`;
    const heights = byHeightData(steady, system);
    if (heights.rows.length > 0)
      sections.push(section('BY HEIGHT above the ground, while holding', textTable(heights), note(hot)));
  }
  if (assumed) {
    const fire = `${say('power', assumed.fire_W)}, ${say('massFlow', assumed.wood_kg_per_s)} of wood`;
    sections.push(
      section(
        `TEMPERATURES under the full fire, settled: ${fire}`,
        textTable(temperatureData(assumed, design.gauge, system)),
        note(
          'Gas is what flows past, thermometer is what a stem there (or the food) takes up between gas and walls, steel is ' +
            "the mean of the station's outside walls, hottest outside is what a hand would touch.",
        ),
      ),
    );
  }
  if ((steady ?? assumed)?.linings) {
    sections.push(section('LINING, each where it is hottest', textTable(liningsData(result, system))));
  }
  if (steady || assumed) {
    sections.push(section('WHERE THE HEAT GOES', textTable(heatLossData(result, system)), note(PLATE_AND_LOSS)));
    sections.push(section('AIR AND DRAFT', textTable(airData(result, system))));
  }
  if (result.ventCurve) {
    const turned = ventTurnText(result, system);
    sections.push(
      section(
        'VENTS in use: where the thermometer settles, with wood enough on the bed',
        textTable(ventCurveData(result.ventCurve, design, system)),
        note(ventNote(result.ventCurve)),
        ...(turned === '' ? [] : [note(turned)]),
      ),
    );
  }
  if (steady) sections.push(section('OPENINGS while holding', textTable(openingsData(steady, system))));
  if (assumed) sections.push(section('OPENINGS under the full fire', textTable(openingsData(assumed, system))));
  sections.push(section('WEIGHTS', textTable(weightsData(result, system))));
  if (result.hands) {
    sections.push(
      section(
        'HANDS on handles and on the outside',
        textTable(handlesData(result.hands, system)),
        textTable(surfacesData(result.hands, system)),
        note(HANDS_NOTE),
        note(`Thresholds: ${result.hands.standard}.`),
      ),
    );
  }
  if (result.weight) sections.push(weightText(result.weight, design, system));
  sections.push(
    section(
      'ESTIMATES USED, which no correlation settles; each can be set in the design',
      textTable(unknownsData(result, system)),
      ...(fitted === null ? [] : [note(fitted)]),
      note(`Balance: over the whole run ${balanceWords(result.balance)}.`),
    ),
  );
  return sections;
}

function title({ design, tool }: EstimateResult): string {
  return heading(plainTexts([design.name, design.shop, design.job]).join(' - '), tool);
}

function hottestWords({ hottestOutside: hottest }: SteadyState, say: Say): string {
  return `${outsideLabel(hottest)}, ${say('temperature', hottest.steel_K)}`;
}
