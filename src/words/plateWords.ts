/**
 * What plate is good for beside heat, in sentences: does it stay flat, how long does it last, and where thin plate does
 * as well.
 */
import type { Comparison, ComparedOption } from '../study/compare/compare.js';
import { COALS_SPREAD, MOST_YEARS, type PanelState, type PlateStudy } from '../study/plate/plateStudy.js';
import { listed } from '../units/listed.js';
import type { Say } from './quantity.js';

interface Told {
  label: string;
  plate: PlateStudy;
}

function toldOf(options: readonly ComparedOption[], name: (label: string) => string): Told[] {
  return options.flatMap(({ label, studies }) => (studies ? [{ label: name(label), plate: studies.plate }] : []));
}

const FLAT: Readonly<Record<PanelState['flat'], string>> = {
  yes: 'stays flat',
  'may buckle': 'may oil-can',
  no: 'oil-cans',
};

/**
 * Which options keep their flat panels flat; empty where nothing was computed or no panel is flat.
 *
 * @param name an option's label as the reader knows it
 */
export function flatnessWords({ options }: Comparison, name = (label: string) => label): string {
  const told = toldOf(options, name).filter(({ plate }) => plate.panels.length > 0);
  if (told.length === 0) return '';
  const state = ({ plate }: Told) => plate.worst?.flat ?? 'yes';
  const alone = told.length === 1;
  if (told.every((each) => state(each) === state(told[0]))) {
    const [{ plate }] = told;
    if (state(told[0]) === 'yes') {
      return alone
        ? 'Every flat panel stays flat under the full fire.'
        : 'Every flat panel stays flat under the full fire in all of them: in that the thinnest does as well.';
    }
    return `${alone ? 'The' : 'In all of them the'} ${plate.worst!.name} ${FLAT[state(told[0])]} under the full fire.`;
  }
  const clauses = (['yes', 'may buckle', 'no'] as const).flatMap((flat) => {
    const those = told.filter((each) => state(each) === flat);
    if (those.length === 0) return [];
    const names = listed(those.map(({ label }) => label));
    if (flat === 'yes') return [`every flat panel stays flat with ${names}`];
    const panels = [...new Set(those.map(({ plate }) => plate.worst!.name))];
    return [`the ${listed(panels)} ${FLAT[flat]} with ${names}`];
  });
  const text = `under the full fire ${clauses.join('; ')}.`;
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** All that a comparison says of plate, a sentence or two each. */
export function plateNotes(comparison: Comparison, say: Say): string[] {
  const told = toldOf(comparison.options, (label) => label);
  if (told.length === 0) return [];
  const alone = told.length === 1;
  const degrees = (kelvin: number) => say('temperatureDifference', kelvin, { digits: 2 });
  const panels = told.flatMap(({ label, plate: { worst } }) =>
    worst
      ? [
          `${alone ? '' : `${label}: `}${worst.name}, ${degrees(worst.overEdge_K)} against ${degrees(worst.buckles_K.supported)} to ${degrees(worst.buckles_K.clamped)}, ${FLAT[worst.flat]}`,
        ]
      : [],
  );
  const [{ plate: first }] = told;
  const hottest = Math.max(...told.map(({ plate }) => plate.hottest.full_K));
  const scale = told.flatMap(({ plate }) => plate.scale ?? []);
  return [
    ...(first.panels.length > 0 ? [flatnessWords(comparison)] : []),
    ...(panels.length > 0
      ? [
          `How much hotter the flat panel nearest to buckling is in its middle than at its edge, against where it may buckle (edges that tilt) and where it does (edges that don't): ${panels.join('; ')}.`,
        ]
      : []),
    'What is rolled, a shell or a lid of one, does not oil-can. A panel held by a cold heavy frame would buckle at about a tenth of that difference.',
    ...(scale.length > 0
      ? [
          scaleWords(scale[0], say),
          `${yearsWords(told, say)} ${truthWords(say('temperature', hottest), scale[0].grate)}`,
        ]
      : []),
  ];
}

function scaleWords({ grate, steel_K, hourly_m }: NonNullable<PlateStudy['scale']>, say: Say): string {
  const lost = say('length', 1000 * hourly_m, { digits: 2, shop: 'in', si: 'mm' });
  const where = grate
    ? `coals lie on the grate and not against the firebox, whose steel is ${say('temperature', steel_K)} at its hottest as the model has it`
    : `where coals lie against the firebox its steel is taken at ${say('temperature', steel_K)} (estimate)`;
  return `Scale: ${where}, and both faces lose ${lost} in 1,000 h of fire, whatever the plate.`;
}

/** Where thin plate does as well, and what does more than plate. */
function truthWords(hottest: string, grate: boolean): string {
  return `Everywhere else plate runs at ${hottest} at most, as the mean of each, and thin plate scales no sooner there than thick. Rust under wet ash is not in this.${grate ? '' : ' A grate that keeps coals off the steel does more than plate.'}`;
}

/** Years to half a plate, and how far they spread with the heat that is a guess. */
function yearsWords(told: readonly Told[], say: Say): string {
  const years = (value: number) => (value < MOST_YEARS ? String(Number(value.toPrecision(2))) : `${MOST_YEARS}+`);
  const each = told.flatMap(({ label, plate: { scale } }) =>
    scale ? [`${told.length > 1 ? `${label} ` : ''}${years(scale.halfGone_years.likely)}`] : [],
  );
  const { hotter, cooler } = told.find(({ plate }) => plate.scale)!.plate.scale!.halfGone_years;
  const spread = say('temperatureDifference', COALS_SPREAD);
  return `Years to half of it there: ${each.join(', ')}; that heat decides: with ${spread} less or more the first has ${years(cooler)} or ${years(hotter)}.`;
}
