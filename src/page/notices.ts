/** What the page says to a person in words of its own: in passing, or in a box that stays until it is closed. */
import { formatFault, type DesignFault } from '../design/faults.js';
import { plainText } from '../words/plainText.js';
import { element, part, setText } from './dom.js';
import { MOST_OPTIONS, type Workbench } from './workbench.js';

/** Faults shown at most; whoever has more has the wrong file. */
const MOST_FAULTS = 12;

/** A word for a listener. */
export function announce(words: string): void {
  setText(part('status'), words);
}

/** A word on what has happened, with what can be done about it. */
export function tell(words: string, actions: Record<string, () => void> = {}, field?: HTMLElement): void {
  const box = part('notice');
  box.replaceChildren(
    element('p', {}, words),
    ...(field ? [field] : []),
    element(
      'div',
      { class: 'tools' },
      ...Object.entries(actions).map(([label, act]) => button(label, act)),
      closing(box),
    ),
  );
  box.hidden = false;
}

/** Says why a file was not opened, or takes that away. */
export function showFaults(name: string, faults: readonly DesignFault[] | null): void {
  const box = part('messages');
  box.hidden = faults === null;
  if (!faults) return;
  box.replaceChildren(
    element('h2', {}, `${plainText(name, 60)} was not opened; what was there stays`),
    element('ul', {}, ...faults.slice(0, MOST_FAULTS).map((fault) => element('li', {}, formatFault(fault)))),
    closing(box),
  );
}

/** Options of a file that are not shown are missed in silence otherwise. */
export function showLeftOut({ leftOut }: Workbench): void {
  const told = part('left-out');
  told.hidden = leftOut === 0;
  const [what, are] = leftOut === 1 ? ['One option', 'is'] : [`${leftOut} options`, 'are'];
  setText(told, `${what} of the file ${are} not shown: there is room for ${MOST_OPTIONS}.`);
}

function closing(box: HTMLElement): HTMLElement {
  return button('Close', () => (box.hidden = true));
}

function button(label: string, act: () => void): HTMLElement {
  const made = element('button', { type: 'button' }, label);
  made.addEventListener('click', act);
  return made;
}
