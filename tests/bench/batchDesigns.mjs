/**
 * Writes designs as NDJSON on standard output: the examples in turn, each with its sizes, plate, fire and weather moved by a
 * seed, as somebody would who looks for a better pit. Arguments: library, number of designs.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { parse } from 'yaml';

const [library, count] = process.argv.slice(2);
const { readDesign } = await import(pathToFileURL(library).href);
const PLATES = ['10 ga', '3/16 in', '1/4 in', '5/16 in', '3/8 in'];

const examples = readdirSync('examples')
  .filter((name) => /\.ya?ml$/.test(name))
  .map((name) => {
    const text = readFileSync(`examples/${name}`, 'utf8');
    return { tree: parse(text), design: readDesign(text, { fileName: name }).design };
  });

const generator = xoroshiro128plus(5);
const share = () => (generator.next() >>> 0) / 2 ** 32;
const between = (low, high) => low + (high - low) * share();
const moved = (value, low, high, unit) => `${(value * between(low, high)).toPrecision(5)} ${unit}`;

for (let i = 0; i < Number(count); i++) {
  const { tree: drawn, design } = examples[i % examples.length];
  const tree = structuredClone(drawn);
  tree.name = `${drawn.name} ${i + 1}`;
  tree.site = { ...tree.site, air: `${between(-5, 35).toFixed(1)} °C`, wind: `${between(0, 8).toFixed(1)} m/s` };
  tree.fire.heat = moved(design.fire.heat, 0.7, 1.4, 'W');
  tree.throat.area = moved(design.throat.area, 0.75, 1, 'm^2');
  tree.stacks.forEach((stack, k) => (stack.height = moved(design.stacks[k].height, 0.7, 1.4, 'm')));
  if (tree.chamber) {
    tree.chamber.length = moved(design.chamber.length, 1, 1.3, 'm');
    if (share() < 0.3) tree.chamber.insulation = { material: 'ceramic fibre', thickness: '1 in', skin: '18 ga' };
  }
  for (const part of [tree.firebox, tree.chamber, tree.upright]) {
    if (part?.plate) part.plate = PLATES[Math.floor(PLATES.length * share())];
  }
  console.log(JSON.stringify(tree));
}
