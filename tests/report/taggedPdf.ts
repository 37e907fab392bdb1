import { inflateSync } from 'node:zlib';
import { expect, it } from 'vitest';
import type { Block, ReportDocument } from '../../src/report/sheets/blocks.js';
import type { TableData } from '../../src/report/text/table.js';
import { readPdf, walk, type Tag } from './support/poppler.js';
import { pdfOf } from './support/reports.js';

const flat = (blocks: Block[]): Block[] =>
  blocks.flatMap((block) => (block.kind === 'columns' ? block.columns.flatMap(flat) : [block]));
const blocksOf = ({ sheets }: ReportDocument) => sheets.flatMap(({ blocks }) => flat(blocks));
const tablesOf = (document: ReportDocument) =>
  blocksOf(document).flatMap((block) => (block.kind === 'table' ? [block.table] : []));
const figuresOf = (document: ReportDocument) =>
  blocksOf(document).flatMap((block) => (block.kind === 'figure' ? [block.scene] : []));
const tidy = (text: string) => text.replace(/\s+/g, ' ').trim();

/** The text that stands for each figure, in the order they are read. */
function alternatives(pdf: Buffer): string[] {
  const objects = pdf.toString('latin1').matchAll(/<<\n\/S \/Figure\n(?:\/Alt \(((?:[^\\)]|\\[\s\S])*)\)\n)?/g);
  return [...objects].map(([, raw = '']) => {
    const plain = raw.replace(/\\([\s\S])/g, (_, c: string) => ({ n: '\n', r: '\r', t: '\t' })[c] ?? c);
    if (!plain.startsWith('þÿ')) return plain;
    return Buffer.from(plain.slice(2), 'latin1').swap16().toString('utf16le');
  });
}

/** Lines of every page that draw something outside both text and page furniture. */
function untagged(pdf: Buffer): string[] {
  const text = pdf.toString('latin1');
  const pages = [...text.matchAll(/\/Type \/Page\n[\s\S]*?\/Contents (\d+) 0 R/g)];
  expect(pages.length).toBeGreaterThan(3);
  return pages.flatMap(([, id]) => {
    const start = text.indexOf('stream\n', text.indexOf(`\n${id} 0 obj\n`)) + 'stream\n'.length;
    const end = text.indexOf('\nendstream', start);
    let depth = 0;
    return inflateSync(pdf.subarray(start, end))
      .toString('latin1')
      .split('\n')
      .filter((line) => {
        if (/B[DM]C$/.test(line)) depth++;
        if (line === 'EMC') depth--;
        return depth === 0 && /(^|\s)(TJ|Tj|S|s|f|f\*|B|b|sh|Do)$/.test(line);
      });
  });
}

/** A table as its tags say it: head and rows as texts, and which cells name a row or a column. */
function expectTable(tag: Tag, { caption, head, rows }: TableData): void {
  const [first, ...others] = tag.children;
  expect(first.name === 'Caption' ? tidy(first.text) : undefined).toBe(caption);
  const lines = first.name === 'Caption' ? others : tag.children;
  expect(lines.every(({ name }) => name === 'TR')).toBe(true);
  const isHeaded = head.some((cell) => cell !== '');
  const expected = [...(isHeaded ? [head] : []), ...rows].map((cells) => cells.map(tidy));
  expect(lines.map(({ children }) => children.map(({ text }) => tidy(text)))).toEqual(expected);
  lines.forEach(({ children }, i) => {
    const scopes = children.map(({ name, scope }) => (name === 'TH' ? scope : undefined));
    if (isHeaded && i === 0) expect(scopes).toEqual(head.map((cell) => (cell === '' ? undefined : 'Column')));
    else if (children[0].text !== '') expect(scopes[0]).toBe('Row');
  });
}

/** What is printed of these documents is, as a screen reader walks it, what stands in them. */
export function expectTagged(documents: readonly ReportDocument[]): void {
  const both = documents.map((document) => ({ document, pdf: pdfOf(document, 'letter') }));
  const read = both.map(({ document, pdf }) => ({ document, pdf, ...readPdf(pdf) }));

  it.each(read)('$document.name: is tagged, with a language and a title that is shown', ({ pdf, info, document }) => {
    expect(info).toMatch(/^Tagged: +yes$/m);
    expect(/^Title: +(.*)$/m.exec(info)![1]).toBe(document.name);
    const text = pdf.toString('latin1');
    expect(text).toMatch(/\/Type \/Catalog\n[\s\S]*?\/Lang \(en\)/);
    expect(text).toMatch(/\/DisplayDocTitle true/);
    expect(info).not.toMatch(/CreationDate/);
  });

  it.each(read)('$document.name: has the headings of its sheets, in order', ({ tags, document }) => {
    const headings = walk(tags).filter(({ name }) => /^H\d$/.test(name));
    const [first, ...behind] = document.sheets;
    const inside = ({ blocks }: (typeof behind)[number]) =>
      flat(blocks).flatMap((block) => (block.kind === 'heading' ? [block.text] : []));
    expect(headings.map(({ name, text }) => `${name} ${tidy(text)}`)).toEqual([
      `H1 ${document.name}`,
      ...inside(first).map((text) => `H2 ${text}`),
      ...behind.flatMap((sheet) => [`H2 ${sheet.title}`, ...inside(sheet).map((text) => `H3 ${text}`)]),
    ]);
  });

  it.each(read)('$document.name: has every table as a table, cell by cell', ({ tags, document }) => {
    const tables = walk(tags).filter(({ name }) => name === 'Table');
    const expected = tablesOf(document);
    expect(tables).toHaveLength(expected.length);
    tables.forEach((tag, i) => expectTable(tag, expected[i]));
  });

  it.each(read)('$document.name: says every sentence and list whole, words apart', ({ tags, document }) => {
    const said = walk(tags).map(({ text }) => tidy(text));
    for (const block of blocksOf(document)) {
      const texts = block.kind === 'list' ? block.items : 'text' in block ? [block.text] : [];
      for (const text of texts) expect(said).toContain(tidy(text));
    }
    const lists = walk(tags).filter(({ name }) => name === 'L');
    expect(lists.map(({ children }) => children.length)).toEqual(
      blocksOf(document).flatMap((block) => (block.kind === 'list' ? [block.items.length] : [])),
    );
  });

  it.each(read)('$document.name: tells every figure in words', ({ pdf, document }) => {
    const figures = figuresOf(document);
    expect(figures.length).toBeGreaterThan(4);
    const ends = (text: string) => text.replace(/\.$/, '');
    expect(alternatives(pdf).sort()).toEqual(
      figures.map(({ title, description }) => `${ends(title)}. ${ends(description)}.`).sort(),
    );
  });

  it.each(read)('$document.name: leaves nothing on a page that is neither text nor furniture', ({ pdf }) => {
    expect(untagged(pdf)).toEqual([]);
  });

  it.each(read)(
    '$document.name: has a bookmark for each sheet and table, on its page',
    ({ outline, pages, document }) => {
      const titles = outline.map(({ title }) => title.replace(/&amp;/g, '&'));
      for (const { title } of document.sheets) expect(titles).toContain(title);
      for (const { caption } of tablesOf(document)) if (caption) expect(titles).toContain(caption);
      for (const { page, title } of outline.slice(1)) expect(tidy(pages[page - 1])).toContain(title);
    },
  );
}
