/**
 * Writes designs as NDJSON on standard output: the examples in turn, each with its sizes, plate, fire and weather moved
 * by a seed, as somebody would who looks for a better pit. Argument: number of designs.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { readDesign, seededRandom } from '../../src/index.js';

/** What is moved of a design file. */
interface DesignFile {
  name: string;
  site: object;
  fire: { heat: string };
  throat: { area: string };
  stacks: { height: string }[];
  firebox: { plate: string };
  chamber?: { plate: string; length: string; insulation?: object };
  upright?: { plate: string };
  options?: unknown;
}

const [count] = process.argv.slice(2);
const PLATES = ['10 ga', '3/16 in', '1/4 in', '5/16 in', '3/8 in'];

const examples = readdirSync('examples')
  .filter((name) => /\.ya?ml$/.test(name))
  .map((name) => {
    const text = readFileSync(`examples/${name}`, 'utf8');
    const { design } = readDesign(text, { fileName: name });
    if (!design) throw new Error(`${name} has faults`);
    return { tree: parse(text) as DesignFile, design };
  });

const share = seededRandom(5);
const between = (low: number, high: number) => low + (high - low) * share();
const moved = (value: number, low: number, high: number, unit: string) =>
  `${(value * between(low, high)).toPrecision(5)} ${unit}`;

for (let i = 0; i < Number(count); i++) {
  const { tree: drawn, design } = examples[i % examples.length];
  const tree = structuredClone(drawn);
  // a line is one design
  delete tree.options;
  tree.name = `${drawn.name} ${i + 1}`;
  tree.site = { ...tree.site, air: `${between(-5, 35).toFixed(1)} °C`, wind: `${between(0, 8).toFixed(1)} m/s` };
  tree.fire.heat = moved(design.fire.heat, 0.7, 1.4, 'W');
  tree.throat.area = moved(design.throat.area, 0.75, 1, 'm^2');
  tree.stacks.forEach((stack, k) => (stack.height = moved(design.stacks[k].height, 0.7, 1.4, 'm')));
  if (tree.chamber) {
    tree.chamber.length = moved(design.chamber!.length, 1, 1.3, 'm');
    if (share() < 0.3) tree.chamber.insulation = { material: 'ceramic fibre', thickness: '1 in', skin: '18 ga' };
  }
  for (const part of [tree.firebox, tree.chamber, tree.upright]) {
    if (part) part.plate = PLATES[Math.floor(PLATES.length * share())];
  }
  console.log(JSON.stringify(tree));
}
