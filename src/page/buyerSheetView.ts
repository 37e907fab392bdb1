import type { Block, Sheet } from '../report/sheets/blocks.js';
import { plainText, tied } from '../words/plainText.js';
import type { Design } from '../design/design.js';
import { element, tableRows } from './dom.js';
import { sceneElement } from './sceneView.js';

/** The report's own sheet for the buyer, shown on paper only. */
export function showBuyerSheet(root: HTMLElement, sheet: Sheet, { name, shop, job }: Design): void {
  const [owner, pit] = [plainText(shop, 60), plainText(name, 70)];
  root.replaceChildren(
    element(
      'div',
      { class: 'sheet-head' },
      element('strong', {}, owner || pit),
      element('span', {}, [owner ? pit : '', plainText(job, 80)].filter(Boolean).join(', ')),
    ),
    ...sheet.blocks.map(blockElement),
  );
}

function blockElement(block: Block): HTMLElement {
  switch (block.kind) {
    case 'heading':
      return element('h3', {}, block.text);
    case 'lead':
      return element('p', { class: 'lead' }, tied(block.text));
    case 'text':
      return element('p', { class: block.small ? 'small' : '' }, tied(block.text));
    case 'list':
      return element(
        'ul',
        { class: block.small ? 'small' : '' },
        ...block.items.map((item) => element('li', {}, tied(item))),
      );
    case 'columns':
      return element(
        'div',
        { class: `sheet-columns${block.flexible ? ' flexible' : ''}` },
        ...block.columns.map((column, i) =>
          element('div', { class: `w${block.shares?.[i] ?? 1}` }, ...column.map(blockElement)),
        ),
      );
    case 'figure':
      return element(
        'figure',
        { class: block.flexible ? 'flexible' : '' },
        sceneElement(block.scene),
        element('figcaption', { class: 'small' }, block.caption),
      );
    case 'table':
      return tableElement(block.table);
  }
}

function tableElement({ caption, head, rows }: Extract<Block, { kind: 'table' }>['table']): HTMLElement {
  const table = element('table', {});
  if (caption !== undefined) table.append(element('caption', {}, caption));
  table.append(...tableRows(head, rows, cell));
  return table;
}

/** A number, and what it differs by. */
function cell(text: string): HTMLTableCellElement {
  const [value, ...below] = text.split('\n');
  return element('td', {}, value, ...below.map((line) => element('small', {}, ` ${line}`)));
}
