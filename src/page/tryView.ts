import { tied } from '../words/plainText.js';
import { element, part, setText } from './dom.js';
import type { Step } from './trySteps.js';

interface Row {
  button: HTMLButtonElement;
  words: HTMLElement;
}

/**
 * What a step of plate changes, in words, each with a button that tries it; and buttons for what else is worth a tap.
 */
export class TryView {
  private rows = new Map<string, Row>();
  private steps = new Map<string, Step>();
  private signature = '';

  /** @param take makes a step an option */
  constructor(private readonly take: (step: Step) => void) {}

  /** The steps of the design, all plate first, then by part, then those without words. */
  show(all: readonly Step[], parts: readonly Step[], others: readonly Step[]): void {
    const steps = [...all, ...parts, ...others];
    this.steps = new Map(steps.map((step) => [step.id, step]));
    const signature = [all, parts, others].map((each) => each.map(({ id }) => id).join()).join(' ');
    if (signature !== this.signature) {
      this.signature = signature;
      this.rows = new Map();
      part('try-all').replaceChildren(...all.map((step) => this.row(step)));
      part('try-parts').replaceChildren(...parts.map((step) => this.row(step)));
      part('try-more').replaceChildren(...others.map(({ id }) => this.button(id)));
      part('try-by-part').hidden = parts.length === 0;
    }
    for (const { id, label } of steps) {
      const row = this.rows.get(id);
      if (row) setText(row.button, label);
    }
  }

  /** What steps change; those that are worked out anew are faint until they come. */
  tell(lines: readonly { step: string; text: string }[]): void {
    for (const { step, text } of lines) {
      const row = this.rows.get(step);
      if (!row) continue;
      setText(row.words, tied(text));
      row.words.classList.remove('waiting');
    }
  }

  wait(): void {
    for (const { words } of this.rows.values()) words.classList.add('waiting');
  }

  /** Is there room for one more option? */
  allow(more: boolean): void {
    for (const { button } of this.rows.values()) button.disabled = !more;
  }

  private row(step: Step): HTMLElement {
    const button = this.button(step.id);
    const words = element('p', { class: 'waiting', id: `try-${step.id}-words` });
    this.rows.set(step.id, { button, words });
    return element('li', { 'data-step': step.id }, button, words);
  }

  private button(id: string): HTMLButtonElement {
    const button = element('button', { type: 'button', 'data-try': id });
    button.addEventListener('click', () => {
      const step = this.steps.get(id);
      if (step) this.take(step);
    });
    this.rows.set(id, { button, words: element('p', {}) });
    return button;
  }
}
