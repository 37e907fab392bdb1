/** `a, b and c`, or with another word before the last; of more than `most` the first ones and how many more. */
export function listed(items: readonly string[], most = Infinity, last: 'and' | 'or' = 'and'): string {
  const shown = items.length > most + 1 ? [...items.slice(0, most), `${items.length - most} more`] : items;
  return shown.length > 1 ? `${shown.slice(0, -1).join(', ')} ${last} ${shown[shown.length - 1]}` : (shown[0] ?? '');
}
