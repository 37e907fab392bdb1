import { plainText } from '../words/plainText.js';
import { MISSING } from '../study/compare/told.js';
import { element, setText } from './dom.js';
import type { EstimateResult } from '../study/estimate/result.js';
import { numberRows, toldBeside, type NumberRow } from './numbers.js';
import { systemOf } from '../units/choice.js';
import type { Option } from './option.js';
import type { Workbench } from './workbench.js';

interface OptionActions {
  choose(option: Option): void;
  rename(option: Option, label: string): void;
  remove(option: Option): void;
  /** the others are held against this one from now on */
  holdAgainst(option: Option): void;
}

/** The table of numbers: a column an option, differences from the first one under each number. */
export class NumbersView {
  private signature = '';
  private rows: NumberRow[] = [];
  private ids: number[] = [];
  private cells = new Map<string, { value: HTMLElement; difference: HTMLElement }>();

  constructor(
    private readonly table: HTMLTableElement,
    private readonly actions: OptionActions,
  ) {}

  update(bench: Workbench): void {
    const results = bench.options.map(newest);
    const beside = results.filter((result) => result !== null);
    const columns = bench.options.map((option, i) => {
      const result = results[i];
      // what others cost is told against the first option alone
      const others = results[0] === null ? undefined : beside;
      const rows =
        result && numberRows(result, bench.options.length === 1 ? bench.units : systemOf(bench.units), others);
      return { option, rows: rows && new Map(rows.map((row) => [row.quantity.key, row])) };
    });
    // a row that was there stays while the same options are worked on: what leaks at one place of a slider jumps at no
    // other
    if (bench.options.some(({ id }, i) => id !== this.ids[i]) || bench.options.length !== this.ids.length)
      this.rows = [];
    this.ids = bench.options.map(({ id }) => id);
    const before = new Map(this.rows.map((row) => [row.quantity.key, row]));
    const rows = mergedRows([...columns.map((column) => column.rows), before]);
    this.rows = rows;
    const signature = JSON.stringify([
      bench.current.id,
      columns.map(({ option }) => option.id),
      bench.options.length,
      rows.map(({ quantity, label }) => [quantity.key, label]),
    ]);
    if (signature !== this.signature) this.build(bench, rows, signature);
    this.rename(bench);
    for (const { quantity } of rows) {
      const id = quantity.key;
      // what is still being computed is no number yet
      const own = columns.map(({ option, rows: all }) => {
        const row = all?.get(id);
        return row && !(option.full === null && quantity.missing === 'never') ? row : undefined;
      });
      const told =
        columns.length === 1
          ? [own[0] ? { text: own[0].text, difference: '' } : null]
          : toldBeside(own, systemOf(bench.units));
      columns.forEach(({ option }, i) => {
        const cell = this.cells.get(`${option.id} ${id}`);
        if (!cell) return;
        const { text, difference } = told[i] ?? { text: MISSING, difference: '' };
        showValue(cell.value, text);
        setText(cell.difference, difference);
        cell.difference.hidden = difference === '';
      });
    }
  }

  /** Columns are headed by what their options are called now; a name under someone's fingers is left alone. */
  rename({ options }: Workbench): void {
    for (const { id, label } of options) {
      const field = document.getElementById(`option-name-${id}`) as HTMLInputElement | null;
      if (field && field !== document.activeElement && field.value !== label) field.value = label;
    }
  }

  private build(bench: Workbench, rows: NumberRow[], signature: string): void {
    const inside = this.table.contains(document.activeElement) ? document.activeElement?.id : undefined;
    this.signature = signature;
    this.cells = new Map();
    const { options } = bench;
    const head = element(
      'thead',
      {},
      element('tr', {}, element('td', {}), ...options.map((option) => this.header(bench, option))),
    );
    const body = element('tbody', {});
    let group = '';
    for (const row of rows) {
      if (row.group !== group) {
        group = row.group;
        body.append(
          element(
            'tr',
            { class: 'group-row' },
            element('th', { scope: 'colgroup', colspan: options.length + 1 }, element('span', {}, group)),
          ),
        );
      }
      const line = element('tr', { 'data-row': row.quantity.key }, element('th', { scope: 'row' }, row.label));
      for (const option of options) {
        const value = element('span', { class: 'value' });
        const difference = element('span', { class: 'difference', hidden: true });
        this.cells.set(`${option.id} ${row.quantity.key}`, { value, difference });
        line.append(element('td', { class: option === bench.current ? 'chosen' : '' }, value, difference));
      }
      body.append(line);
    }
    this.table.replaceChildren(head, body);
    if (inside) document.getElementById(inside)?.focus();
  }

  private header(bench: Workbench, option: Option): HTMLElement {
    const { id } = option;
    const chosen = option === bench.current;
    const radio = element('input', { type: 'radio', name: 'option', id: `option-${id}`, checked: chosen });
    radio.addEventListener('change', () => this.actions.choose(option));
    const name = element('input', {
      type: 'text',
      id: `option-name-${id}`,
      class: 'option-name',
      maxlength: 40,
      'aria-label': `Name of ${plainText(option.label, 40)}`,
    });
    name.value = option.label;
    name.addEventListener('input', () => this.actions.rename(option, name.value));
    const cell = element(
      'th',
      { scope: 'col', class: chosen ? 'chosen' : '' },
      name,
      element('label', { class: 'work-on', for: radio.id }, radio, chosen ? 'working on' : 'work on'),
    );
    if (option !== bench.baseline) {
      const hold = element('button', { type: 'button', class: 'quiet', id: `option-hold-${id}` }, 'compare to this');
      hold.setAttribute('aria-label', `Compare to this: ${plainText(option.label, 40)}`);
      hold.addEventListener('click', () => this.actions.holdAgainst(option));
      cell.append(hold);
    }
    if (bench.options.length > 1) {
      const remove = element('button', { type: 'button', class: 'quiet', id: `option-remove-${id}` }, 'remove');
      remove.setAttribute('aria-label', `Remove ${plainText(option.label, 40)}`);
      remove.addEventListener('click', () => this.actions.remove(option));
      cell.append(remove);
    }
    return cell;
  }
}

/** A number and in brackets the same in other units, each of which stays on one line. */
function showValue(node: HTMLElement, text: string): void {
  if (node.textContent === text) return;
  const cut = text.indexOf(' (');
  const parts = cut < 0 ? [text] : [text.slice(0, cut), text.slice(cut + 1)];
  node.replaceChildren(...parts.flatMap((each, i) => [i > 0 ? ' ' : '', element('span', {}, each)]));
}

/** The newest steady numbers with the newest warm-up, which comes a moment later. */
function newest({ full, result }: Option): EstimateResult | null {
  return result && { ...result, warmUp: full?.warmUp ?? null };
}

/** Rows of all options together, in order; an option that lacks one shows a dash. */
function mergedRows(columns: (Map<string, NumberRow> | null)[]): NumberRow[] {
  const merged: NumberRow[] = [];
  for (const column of columns) {
    let at = 0;
    for (const row of column?.values() ?? []) {
      const found = merged.findIndex(({ quantity }) => quantity.key === row.quantity.key);
      if (found >= 0) at = found + 1;
      else merged.splice(at++, 0, row);
    }
  }
  return merged;
}
