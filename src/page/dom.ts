/** Elements without markup: whatever a design file says ends up as text, never as HTML. */

type Attributes = Record<string, string | number | boolean | null | undefined>;

/** A new element with attributes and what stands in it; text stays text. */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...children: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || (value === false && !name.startsWith('aria-'))) continue;
    made.setAttribute(name, value === true && !name.startsWith('aria-') ? '' : String(value));
  }
  made.append(...children);
  return made;
}

/** Head and body of a table; what begins a row heads it. */
export function tableRows(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  cell = (text: string) => element('td', {}, text),
): HTMLElement[] {
  const headed = head.some((text) => text !== '');
  const heads = head.map((text) => (text === '' ? cell('') : element('th', { scope: 'col' }, text)));
  return [
    ...(headed ? [element('thead', {}, element('tr', {}, ...heads))] : []),
    element(
      'tbody',
      {},
      ...rows.map(([first, ...rest]) => element('tr', {}, element('th', { scope: 'row' }, first), ...rest.map(cell))),
    ),
  ];
}

/** An element that the shell holds. */
export function part<T extends HTMLElement = HTMLElement>(id: string): T {
  const found = document.getElementById(id);
  if (!found) throw new Error(`the page has no ${id}`);
  return found as T;
}

/** Sets a text only where it differs, so that screen readers and selections are left in peace. */
export function setText(node: Node, text: string): void {
  if (node.textContent !== text) node.textContent = text;
}
