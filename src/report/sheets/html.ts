import { escapeMarkup, sceneSvg } from '../../draw/sceneSvg.js';
import type { PaperName } from '../../draw/theme.js';
import { tied } from '../../words/plainText.js';
import type { TableData } from '../text/table.js';
import type { Block, ReportDocument, Sheet } from './blocks.js';
import { sheetStyle } from './htmlStyle.js';

/** What makes the file stand by itself, and its paper. */
export interface HtmlOptions {
  paper: PaperName;
  /** the charts' font as WOFF2 in base64, one a weight; the file then needs nothing from outside */
  fonts: { weight: number; base64: string }[];
  /** SHA-256 of a text in base64: the document allows this one style sheet and nothing else */
  hash: (text: string) => string;
}

/**
 * A report as one HTML file: no script, nothing from outside, every text escaped. Tables are tables, drawings and
 * charts are drawings with a title and a description, so that it reads with a screen reader, in a text browser and on
 * paper alike.
 */
export function reportHtml(document: ReportDocument, { paper, fonts, hash }: HtmlOptions): string {
  const style = sheetStyle(paper, fonts);
  const policy =
    `default-src 'none'; style-src 'sha256-${hash(style)}'; font-src data:; img-src data:; ` +
    `base-uri 'none'; form-action 'none'`;
  const title = [document.name, document.shop].filter((text) => text !== '').join(' - ');
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="referrer" content="no-referrer">',
    `<title>${escapeMarkup(title)}</title>`,
    `<style>${style}</style>`,
    '</head>',
    '<body>',
    '<main>',
    ...document.sheets.map((sheet, i) => sheetHtml(sheet, i, document)),
    '</main>',
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

function sheetHtml(sheet: Sheet, index: number, document: ReportDocument): string {
  const { name, shop, job, maker, sheets } = document;
  const label = `s${index + 1}`;
  const head =
    index === 0
      ? `<header><div><p class="shop">${bdi(shop || 'Pit sheet')}</p><h1 id="${label}">${bdi(name)}</h1></div>` +
        `<div class="aside"><p>${bdi(job)}</p><p>${escapeMarkup(maker)}</p></div></header>`
      : `<header><h2 id="${label}">${escapeMarkup(sheet.title)}</h2>` +
        `<div class="aside"><p>${bdi(name)}</p><p class="count">sheet ${index + 1} of ${sheets.length}</p></div></header>`;
  // a sheet's headings stand one level under its own
  const next = { figure: 0, heading: index === 0 ? 'h2' : 'h3' };
  return [
    `<section class="sheet ${sheet.fit}" aria-labelledby="${label}">`,
    head,
    ...together(
      sheet,
      sheet.blocks.map((block) => blockHtml(block, `${label}f`, next)),
    ),
    '</section>',
  ].join('\n');
}

/**
 * A sheet's last two headings and what stands under them share a page, or else its last table and what stands behind
 * that, so that no few last lines have one to themselves.
 */
function together({ blocks, fit }: Sheet, html: string[]): string[] {
  const table = blocks.findLastIndex(({ kind }) => kind === 'table');
  const headings = blocks.flatMap(({ kind }, i) => (kind === 'heading' && i > table ? [i] : []));
  const last = headings.at(-2) ?? table;
  if (fit === 'one' || last < 0) return html;
  const block = blocks[last];
  if (block.kind === 'table' && isLong(block.table)) return html;
  return [...html.slice(0, last), '<div class="together">', ...html.slice(last), '</div>'];
}

/** A number stays on one line with its unit. */
function sentence(text: string): string {
  return tied(escapeMarkup(text)).replaceAll('\u00a0', '&nbsp;');
}

/** A text from a design file, which keeps its own reading direction to itself. */
function bdi(text: string): string {
  return `<bdi>${escapeMarkup(text)}</bdi>`;
}

function blockHtml(block: Block, prefix: string, next: { figure: number; heading: string }): string {
  switch (block.kind) {
    case 'heading':
      return `<${next.heading} class="minor">${escapeMarkup(block.text)}</${next.heading}>`;
    case 'lead':
      return `<p class="lead">${sentence(block.text)}</p>`;
    case 'text':
      return `<p${block.small ? ' class="small"' : ''}>${sentence(block.text)}</p>`;
    case 'list':
      return `<ul${block.small ? ' class="small"' : ''}>${block.items.map((item) => `<li>${sentence(item)}</li>`).join('')}</ul>`;
    case 'table':
      return tableHtml(block.table);
    case 'figure': {
      const svg = sceneSvg(block.scene, { id: `${prefix}${next.figure++}` });
      return `<figure${block.flexible ? ' class="flexible"' : ''}><div class="picture">${svg}</div><figcaption>${sentence(block.caption)}</figcaption></figure>`;
    }
    case 'columns':
      return (
        `<div class="columns${block.flexible ? ' flexible' : ''}">` +
        block.columns
          .map(
            (column, i) =>
              `<div${block.shares ? ` class="w${block.shares[i]}"` : ''}>${column.map((each) => blockHtml(each, prefix, next)).join('\n')}</div>`,
          )
          .join('\n') +
        '</div>'
      );
  }
}

/** A table of more rows than this goes on over pages, from where it stands. */
const LONG = 30;
const isLong = ({ rows }: TableData): boolean => rows.length > LONG;

function tableHtml(table: TableData): string {
  const { caption, head, rows, align = [] } = table;
  const left = (column: number) => (align[column] ?? (column === 0 ? 'left' : 'right')) === 'left';
  const look = (column: number) => (left(column) ? ' class="l"' : '');
  const headed = head.some((cell) => cell !== '');
  return [
    isLong(table) ? '<table class="long">' : '<table>',
    ...(caption ? [`<caption>${escapeMarkup(caption)}</caption>`] : []),
    ...(headed
      ? [
          `<thead><tr>${head.map((cell, i) => (cell === '' ? `<td></td>` : `<th scope="col"${look(i)}><bdi>${sentence(cell)}</bdi></th>`)).join('')}</tr></thead>`,
        ]
      : []),
    '<tbody>',
    ...rows.map(
      (row) =>
        `<tr>${row
          .map((cell, i) =>
            i === 0 && cell !== '' ? `<th scope="row">${cellHtml(cell)}</th>` : `<td${look(i)}>${cellHtml(cell)}</td>`,
          )
          .join('')}</tr>`,
    ),
    '</tbody></table>',
  ].join('');
}

/** A second line of a cell is what differs: smaller, under the number. */
function cellHtml(cell: string): string {
  const [first, second] = cell.split('\n');
  return second === undefined ? sentence(first) : `${sentence(first)} <small>${sentence(second)}</small>`;
}
