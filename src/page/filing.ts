import { listed } from '../units/listed.js';
import { plainText } from '../words/plainText.js';
import { designFile } from './designFile.js';
import { part } from './dom.js';
import { chooseFile, saveFile } from './files.js';
import { announce, showFaults, showLeftOut, tell } from './notices.js';
import { pageWith } from './savePage.js';
import type { Option } from './option.js';
import type { Workbench } from './workbench.js';

/** Design files opened and saved, and the page itself with the designs in it. */
export class Filing {
  /**
   * @param shell the page as it came
   * @param told when other options have come in, and when all are saved
   */
  constructor(
    private readonly bench: Workbench,
    shell: HTMLElement,
    private readonly told: { opened(): void; saved(): void },
  ) {
    this.opening('open', 'load');
    this.opening('open-beside', 'loadBeside');
    part('save').addEventListener('click', () => this.save());
    part('save-page').addEventListener('click', () => {
      const text = pageWith(shell, bench.keep());
      saveFile({ text, name: bench.baseline.design.name, ending: 'html', type: 'text/html' });
    });
  }

  private opening(id: string, way: 'load' | 'loadBeside'): void {
    chooseFile(part<HTMLInputElement>(id), (text, name) => {
      const faults = this.bench[way](text, name);
      showFaults(name, faults);
      if (faults) return;
      this.told.opened();
      if (way === 'loadBeside') return;
      showLeftOut(this.bench);
      announce(`${plainText(name, 60)} is open. Undo brings back what was here.`);
    });
  }

  private save(): void {
    const { options, baseline } = this.bench;
    const { text, same, apart } = designFile(options);
    const { name } = baseline.design;
    saveFile({ text, name, ending: 'yaml', type: 'application/yaml' });
    for (const option of apart) {
      const own = option.text.copy();
      own.remove(['options']);
      saveFile({ text: own.text(), name: `${name} ${option.label}`, ending: 'yaml', type: 'application/yaml' });
    }
    this.told.saved();
    const names = (all: Option[]) => listed(all.map(({ label }) => plainText(label, 40)));
    const words = [
      ...(same.length > 0
        ? [`${names(same)} ${same.length === 1 ? 'is' : 'are'} built like the first, and not in the file.`]
        : []),
      ...(apart.length > 0 ? [`${names(apart)} went into a file of ${apart.length === 1 ? 'its' : 'their'} own.`] : []),
    ];
    if (words.length > 0) tell(words.join(' '));
  }
}
