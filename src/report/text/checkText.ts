import type { Design, Stack } from '../../design/design.js';
import { plateGaps } from '../../design/decks.js';
import { fireGrateOf } from '../../design/fireGrate.js';
import { doorLabel, doorsOf } from '../../design/doors.js';
import type { DesignWarning } from '../../design/faults.js';
import { dialsOf, gratesOf, placesOf } from '../../design/places.js';
import type { GatherBox } from '../../design/gather.js';
import type { Geometry } from '../../design/geometry.js';
import { geometryOf } from '../../design/geometryOf.js';
import { faceWords } from '../../design/plates.js';
import type { Wall } from '../../design/walls.js';
import type { DesignOption } from '../../design/options.js';
import { PARTS } from '../../design/stations.js';
import type { UnitSystem } from '../../units/index.js';
import { listed } from '../../units/listed.js';
import { designRows } from '../designRows.js';
import { plainText } from '../../words/plainText.js';
import { sayIn, type Say } from '../../words/quantity.js';
import { windWords } from '../../words/windWords.js';
import { restsOn } from '../../words/restsOn.js';
import type { WeightResult } from '../../study/carry/weight.js';
import { table } from './table.js';
import { weightText } from './weightText.js';
import { bullet, paragraph, warningLines } from './paragraphs.js';

const INDENT = '  ';

interface CheckedDesign {
  design: Design;
  /** paths of the fields that took their default */
  defaults: string[];
  warnings: DesignWarning[];
  geometry: Geometry;
  /** other ways to build it that the file names */
  options?: readonly DesignOption[];
  /** where the design names a trailer or loads */
  weight?: WeightResult;
}

/** Every input as read, and what the parts come to in areas, weights and heights; nothing is solved. */
export function checkText(
  { design, defaults, warnings, geometry, options = [], weight }: CheckedDesign,
  system: UnitSystem,
): string {
  const say = sayIn(system);
  const rows = designRows(design, defaults, say);
  const measured = restsOn(design, system);
  const sections = [
    `${plainText(design.name)}: the design can be read and built`,
    ...(measured === null ? [] : [paragraph(measured)]),
    ...(warnings.length > 0 ? [`WARNINGS\n${warningLines(warnings)}`] : []),
    `INPUTS AS READ\n${table(
      ['', '', ''],
      rows.map(({ path, value, isDefault, isFitted }) => [
        path,
        value,
        isFitted ? 'fitted' : isDefault ? 'default' : '',
      ]),
      { indent: INDENT, align: ['left', 'right', 'left'] },
    )}`,
    paragraph(`Wind ${windWords(design, say)}.`),
    `PARTS, heights above the ground\n${partsTable(geometry, say)}`,
    `OUTSIDE FACES\n${facesTable(geometry, say)}`,
    ...(geometry.shared.length > 0 ? [`PLATES BETWEEN PARTS\n${sharedTable(geometry, say)}`] : []),
    `PLACES, heights above the ground\n${placesTable(design, say)}`,
    ...doorsSection(design, say),
    `OPENINGS\n${openingsTable(design, geometry, say)}`,
    `STACKS\n${stacksTable(design, geometry, say)}`,
    `All steel, with stacks, skins and steel contents: ${say('mass', geometry.totalSteelMass)}`,
    ...geometry.parts.flatMap(({ name, liningMass }) =>
      liningMass > 0 ? [`Lining of the ${name}, ${design[name]!.lining!.material}: ${say('mass', liningMass)}`] : [],
    ),
    ...(options.length > 0 ? [`OPTIONS\n${optionsText(options, say)}`] : []),
    ...(weight ? [weightText(weight, design, system)] : []),
  ];
  return `${sections.join('\n\n')}\n`;
}

function optionsText(options: readonly DesignOption[], say: Say): string {
  return options
    .map(({ name, changes, also, design }) => {
      const what = [...changes, ...also].map(({ path, value }) => `${path}=${value}`).join('; ');
      return bullet(
        `${plainText(name)}, ${say('mass', geometryOf(design).totalSteelMass)} of steel: ${plainText(what, 400)}`,
      );
    })
    .join('\n');
}

function partsTable({ parts }: Geometry, say: Say): string {
  return table(
    ['', 'steel area', 'steel weight', 'gas volume', 'floor inside at', 'roof inside at'],
    parts.map((part) => [
      part.name,
      say('area', part.steelArea),
      say('mass', part.steelMass),
      say('volume', part.gasVolume),
      say('length', part.floor, { shop: 'in' }),
      say('length', part.roof, { shop: 'in' }),
    ]),
    { indent: INDENT },
  );
}

/** Faces; with what they are made of and covered with where any part has walls that differ or are more than plate. */
function facesTable({ parts }: Geometry, say: Say): string {
  const walls = parts.flatMap(({ faces }) => faces.map(({ wall }) => wall));
  const told = walls.some(({ lining, shield }) => lining ?? shield) || parts.some((part) => !isOneWall(part));
  return table(
    ['', '', 'outside area', 'weight', 'middle at', ...(told ? ['plate', 'covered with'] : [])],
    parts.flatMap((part) =>
      part.faces.map((face, i) => [
        i === 0 ? part.name : '',
        faceWords(face.name),
        say('area', face.outsideArea),
        say('mass', face.mass),
        say('length', face.centre, { shop: 'in' }),
        ...(told ? [say('plate', face.wall.plate), coverWords(face.wall, say)] : []),
      ]),
    ),
    { indent: INDENT, align: ['left', 'left', 'right', 'right', 'right', 'right', 'left'] },
  );
}

function isOneWall({ faces }: Geometry['parts'][number]): boolean {
  const [first, ...others] = faces.map(({ wall }) => JSON.stringify(wall));
  return others.every((each) => each === first);
}

/** From the gas outwards. */
function coverWords({ lining, insulation, shield }: Wall, say: Say): string {
  return [
    ...(lining ? [`${say('length', lining.thickness)} ${lining.material} inside`] : []),
    ...(insulation ? [`${say('length', insulation.thickness)} ${insulation.material}`] : []),
    ...(shield ? [`shield ${say('length', shield.gap)} off, ${shield.edges}`] : []),
  ].join(', ');
}

function sharedTable({ shared }: Geometry, say: Say): string {
  return table(
    ['', 'area', 'weight', 'middle at'],
    shared.map(({ parts, area, mass, centre }) => [
      listed(parts),
      say('area', area),
      say('mass', mass),
      say('length', centre, { shop: 'in' }),
    ]),
    { indent: INDENT },
  );
}

/** Doors where the design gives any, each where it is, with what leaks round it. */
function doorsSection(design: Design, say: Say): string[] {
  const rows = PARTS.flatMap((part) =>
    doorsOf(design, part).map(({ name, width, height, along, centre, gap }) => [
      plainText(doorLabel(part, name)),
      say('length', width, { shop: 'in' }),
      say('length', height, { shop: 'in' }),
      part === 'chamber' ? `${Math.round(100 * along)} %` : '',
      say('length', centre, { shop: 'in' }),
      say('area', gap),
    ]),
  );
  if (rows.length === 0) return [];
  return [
    `DOORS\n${table(['', 'wide', 'high', 'along', 'middle at', 'gap'], rows, { indent: INDENT, align: ['left'] })}`,
  ];
}

/** Grates and racks, then the thermometers: by which of them a cook may steer. */
function placesTable(design: Design, say: Say): string {
  const grates = design.chamber ? gratesOf(design.chamber) : [];
  const row = (name: string, what: string, along: string, height: number, gauge: boolean) => [
    plainText(name) + (gauge ? ' (gauge)' : ''),
    what,
    along,
    say('length', height, { shop: 'in' }),
  ];
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  const others = [...placesOf(design).filter(({ kind }) => kind !== 'grate'), ...dialsOf(design)];
  return table(
    ['', '', 'along', 'height'],
    [
      ...grates.map(({ name, from, to, height }) =>
        row(name, 'grate', `${percent(from)} to ${percent(to)}`, height, name === design.gauge),
      ),
      ...others.map(({ name, kind, part, along, height }) =>
        row(name, `${kind}, ${part}`, percent(along), height, name === design.gauge),
      ),
    ],
    { indent: INDENT, align: ['left', 'left'] },
  );
}

function openingsTable(design: Design, geometry: Geometry, say: Say): string {
  const section = (name: string) => geometry.parts.find((part) => part.name === name)?.section ?? NaN;
  const share = (area: number, of: number, what: string) => `${Math.round((100 * area) / of)} % of ${what}`;
  const stackArea = geometry.stacks.reduce((total, stack) => total + stack.flowArea, 0);
  const intakes = design.firebox.intakes.map(({ count, area, open }) => count * area * open);
  const open = intakes.reduce((total, area) => total + area, 0);
  const { throat, upright, firebox, chamber } = design;
  const grate = fireGrateOf(firebox);
  const gaps = chamber ? plateGaps(chamber).reduce((total, gap) => total + gap.area, 0) : 0;
  return table(
    ['', 'area', ''],
    [
      ['all intakes, as set', say('area', open), share(open, stackArea, 'the stacks')],
      ...(firebox.ashDoor
        ? [['ash door, as set', say('area', firebox.ashDoor.width * firebox.ashDoor.height * firebox.ashDoor.open), '']]
        : []),
      ...(grate ? [['between the bars of the fire grate', say('area', grate.free), '']] : []),
      ['throat', say('area', throat.area), share(throat.area, section('firebox'), "the firebox's section")],
      ...(upright?.opening
        ? [
            [
              'chamber to upright',
              say('area', upright.opening.area),
              share(upright.opening.area, section('chamber'), "the chamber's section"),
            ],
          ]
        : []),
      ...(gaps > 0 ? [['gaps between the plates', say('area', gaps), share(gaps, throat.area, 'the throat')]] : []),
      ['all stacks', say('area', stackArea), ''],
    ],
    { indent: INDENT, align: ['left', 'right', 'left'] },
  );
}

function stacksTable(design: Design, { stacks }: Geometry, say: Say): string {
  return table(
    ['', 'bore', 'flow area', 'weight', 'base at', 'top at'],
    stacks.flatMap((stack, i) => [
      [
        `on the ${design.stacks[i].part}`,
        say('length', stack.bore),
        say('area', stack.flowArea),
        say('mass', stack.mass),
        say('length', stack.base),
        say('length', stack.top),
      ],
      ...(stack.gather ? [gatherRow(stack.gather, design.stacks[i], say)] : []),
    ]),
    { indent: INDENT },
  );
}

function gatherRow({ mass, contactMass, low, high }: GatherBox, { gather }: Stack, say: Say): string[] {
  const weight = say('mass', mass + contactMass);
  return ['its gather box', '', say('area', gather!.mouth), weight, say('length', low), say('length', high)];
}
