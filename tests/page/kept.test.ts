import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readDesign } from '../../src/design/read.js';
import { starterDesign } from '../../src/design/starter.js';
import { designFile } from '../../src/page/designFile.js';
import { designsIn, linkOf } from '../../src/page/kept.js';
import { Workbench } from '../../src/page/workbench.js';
import { example } from '../cli/support/run.js';
import { edit, labels, textOf } from './support/bench.js';
import { expectReadBack, expectSame, working } from './support/kept.js';
import { saved, type } from './support/open.js';
import { browserAndFolder, onePage } from './support/setUp.js';

describe('steps back and forth', () => {
  it('take back twenty changes of every kind, one by one, and make them again', () => {
    const bench = new Workbench(textOf('offset-with-upright'));
    const seen = [JSON.stringify(bench.keep())];
    const changes: (() => unknown)[] = [
      () => edit(bench, 'chamber.plate', '3/8 in'),
      () => bench.add(),
      () => edit(bench, 'firebox.shape', 'square'),
      () => edit(bench, 'stacks[0].height', '40 in'),
      () => bench.rename(bench.current, 'Taller'),
      () => bench.add(),
      () => edit(bench, 'chamber.insulation.thickness', '2 in'),
      () => bench.holdAgainst(bench.options[1]),
      () => bench.remove(bench.options[2]),
      () => bench.load(textOf('plain-24'), 'plain-24.yaml'),
    ];
    const lengths = ['40 in', '41 in', '42 in', '43 in', '44 in', '45 in', '46 in', '47 in', '48 in', '49 in'];
    for (const length of lengths) changes.push(() => edit(bench, 'chamber.length', length));
    for (const change of changes) {
      change();
      bench.rest();
      seen.push(JSON.stringify(bench.keep()));
    }
    expect(new Set(seen).size).toBe(21);
    for (let i = 19; i >= 0; i--) {
      expect(bench.undo()).toBe(true);
      expect(JSON.stringify(bench.keep())).toBe(seen[i]);
    }
    expect(bench.undo()).toBe(false);
    for (let i = 1; i <= 20; i++) {
      expect(bench.redo()).toBe(true);
      expect(JSON.stringify(bench.keep())).toBe(seen[i]);
    }
    expect(bench.redo()).toBe(false);
  });

  it('count a drag as one change, and a new change ends what could be made again', () => {
    const bench = new Workbench(textOf('plain-24'));
    for (const length of ['61 in', '62 in', '63 in']) edit(bench, 'chamber.length', length);
    bench.rest();
    edit(bench, 'chamber.length', '64 in');
    expect(bench.undo()).toBe(true);
    expect(bench.current.text.get(['chamber', 'length'])).toBe('63 in');
    expect(edit(bench, 'site.wind', '6 mph')).toBe(true);
    expect(bench.redo()).toBe(false);
    bench.undo();
    bench.undo();
    expect(bench.current.text.get(['chamber', 'length'])).toBe('60 in');
    // what is refused is no change
    expect(edit(bench, 'site.wind', '5 parsecs')).toBe(false);
    expect(bench.canUndo).toBe(false);
  });
});

describe('a file of all options', () => {
  it('reads back to the same designs, whatever is tried', () => expectReadBack('plain-24'));

  it('keeps a door of its own plate, names that would be one, and leaves out what differs in nothing', () => {
    const doors = textOf('plain-24').replace(
      /plate: 1\/4 in/g,
      'plate: 1/4 in\n  door: { width: 16 in, height: 12 in, plate: 1/4 in }',
    );
    const bench = new Workbench(doors);
    const option = bench.add()!;
    option.text.set(['chamber', 'plate'], '3/8 in');
    bench.remove(option);
    bench.addText(option.text);
    bench.rename(bench.current, 'As drawn');
    const copy = bench.add()!;
    bench.rename(copy, 'as DRAWN');
    edit(bench, 'chamber.length', '50 in');
    bench.current = bench.baseline;
    bench.add();
    const { text, same: left, apart } = designFile(bench.options);
    expect(left).toEqual([bench.options[3]]);
    expect(apart).toEqual([]);
    const read = readDesign(text, { fileName: 'saved.yaml' });
    if (read.faults) throw new Error(JSON.stringify(read.faults));
    expect(read.options.map(({ name }) => name)).toEqual(['As drawn (2)', 'as DRAWN (3)']);
    expectSame(bench.options[1].design, read.options[0].design);
    // the door stays as it was
    expect(read.options[0].design.chamber?.door?.plate).toBeCloseTo(0.00635, 9);
    expectSame(bench.options[2].design, read.options[1].design);
  });
});

describe('names of options', () => {
  it('say what they change', () => {
    const bench = new Workbench(textOf('offset-with-upright'));
    const named = (...edits: [string, string][]) => {
      bench.add();
      for (const [id, value] of edits) expect(edit(bench, id, value), id).toBe(true);
      const { label } = bench.current;
      bench.remove(bench.current);
      bench.current = bench.baseline;
      return label;
    };
    expect(named(['chamber.plate', '3/8 in'])).toBe('Chamber plate 3/8 in');
    expect(named(['firebox.plate', '3/8 in'], ['chamber.plate', '3/8 in'], ['upright.plate', '3/8 in'])).toBe(
      'All plate 3/8 in',
    );
    expect(named(['firebox.insulation.thickness', '2 in'])).toBe('Firebox insulation 2 in');
    expect(named(['firebox.shape', 'square'])).toBe('Square firebox');
    expect(named(['site.wind', '9 mph'], ['stacks[0].height', '40 in'], ['chamber.length', '70 in'])).toBe(
      'Chamber length 70 in, stack height 40 in and 1 more',
    );
    expect(named()).toBe('Option 2');
    expect(named(['chamber.plate', '0.25 in'])).toBe('Option 2');
  });
});

describe('a link', () => {
  it('carries all options, and the starter in less than 2 kB', async () => {
    expect((await linkOf(new Workbench(starterDesign()))).length).toBeLessThan(2000);
    const bench = new Workbench(textOf('four-ways'));
    bench.current = bench.options[2];
    const found = await designsIn(await linkOf(bench));
    const back = new Workbench(found!);
    expect(labels(back)).toEqual(labels(bench));
    expect(back.options.indexOf(back.current)).toBe(2);
    expect(back.options.map(({ design }) => design)).toEqual(bench.options.map(({ design }) => design));
  });

  it('that is cut short, or none of ours, carries nothing', async () => {
    const whole = await linkOf(new Workbench(starterDesign()));
    for (const link of [whole.slice(0, -40), '#design=', '#design=%%%', `#design=${btoa('{}')}`]) {
      expect(await designsIn(link), link.slice(0, 20)).toBeNull();
    }
  });
});

const { browser, folder } = await browserAndFolder();

describe.skipIf(!browser)('nothing is lost', () => {
  const open = onePage(browser!, folder.path, { design: example('plain-24.yaml'), quiet: true });

  it('one file holds all options, and the page reads it back', async () => {
    const { page } = open;
    await page.locator('#start-over').evaluate((button) => (button as HTMLButtonElement).click());
    expect(await working(page)).toEqual(['As drawn']);
    await page.locator('#add').click();
    await type(page, 'firebox.plate', '3/8 in');
    const { text } = await saved(page);
    const read = readDesign(text, { fileName: 'saved.yaml' });
    if (read.faults) throw new Error(JSON.stringify(read.faults));
    expect(read.options.map(({ name }) => name)).toEqual(['Firebox plate 3/8 in']);
    writeFileSync(folder.at('both.yaml'), text);
    await page.locator('#start-over').evaluate((button) => (button as HTMLButtonElement).click());
    expect(await working(page)).toEqual(['As drawn']);
    await page.locator('#open').setInputFiles(folder.at('both.yaml'));
    await expect.poll(() => working(page)).toEqual(['As drawn', 'Firebox plate 3/8 in']);
    expect(open.wrongs).toEqual([]);
  });
});
