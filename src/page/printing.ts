import type { Sheet } from '../report/sheets/blocks.js';
import { showBuyerSheet } from './buyerSheetView.js';
import { part } from './dom.js';
import type { PictureRequest } from './protocol.js';
import { systemOf } from '../units/choice.js';
import type { Workbench } from './workbench.js';

/** The buyer's sheet, made ready when the hand rests, and printed as what stands on the screen. */
export class Printing {
  /** the print button waits for its sheet */
  private waits = false;

  constructor(
    private readonly bench: Workbench,
    private readonly ask: (request: PictureRequest) => void,
  ) {
    part('print').addEventListener('click', () => {
      this.waits = true;
      this.solved();
    });
  }

  /** Prints, where that was asked for, once every option shown has its numbers. */
  solved(): void {
    if (this.waits && this.bench.allSolved) this.makeReady();
  }

  makeReady(): void {
    const { pictured: options } = this.bench;
    if (options.length > 0) this.ask({ kind: 'sheet', options, system: systemOf(this.bench.units) });
  }

  show(sheet: Sheet): void {
    // of a design that has changed since
    if (!this.bench.allSolved) return;
    showBuyerSheet(part('buyer'), sheet, this.bench.baseline.design);
    if (this.waits) window.print();
    this.waits = false;
  }

  /** A print from the browser's menu shows the page itself until there is a sheet of this design. */
  clear(): void {
    part('buyer').replaceChildren();
  }
}
