import { plainText } from '../words/plainText.js';
import { element, part, setText } from './dom.js';
import type { Workbench } from './workbench.js';

/** Which option is worked on, beside the answer. */
export class WorkingView {
  private readonly select = part<HTMLSelectElement>('working');

  /** @param chosen told when another one is chosen */
  constructor(
    private readonly bench: Workbench,
    chosen: () => void,
  ) {
    this.select.addEventListener('change', () => {
      bench.current = bench.options[this.select.selectedIndex];
      chosen();
    });
  }

  show(): void {
    const { current, options } = this.bench;
    const labels = options.map(({ label }) => plainText(label, 60) || 'unnamed');
    if (JSON.stringify(labels) !== JSON.stringify([...this.select.options].map(({ text }) => text))) {
      this.select.replaceChildren(...labels.map((label) => element('option', {}, label)));
    }
    this.select.selectedIndex = options.indexOf(current);
    part('working-on').classList.toggle('alone', options.length === 1);
    setText(part('glance-working'), options.length === 1 ? '' : labels[this.select.selectedIndex]);
  }
}
