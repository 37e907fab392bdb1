/** A menu that closes once something of it is chosen, by a tap beside it, and by Escape. */
export function closingMenu(box: HTMLDetailsElement): void {
  document.addEventListener('pointerdown', ({ target }) => {
    if (box.open && !box.contains(target as Node)) box.open = false;
  });
  box.addEventListener('keydown', ({ key }) => {
    if (key !== 'Escape') return;
    box.open = false;
    box.querySelector('summary')?.focus();
  });
  box.addEventListener('click', ({ target }) => {
    if ((target as Element).closest('button')) box.open = false;
  });
}
