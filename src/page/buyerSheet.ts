import type { Workbench } from './workbench.js';

/** The sheet for the buyer, on paper only. */
export class BuyerSheet {
  constructor(private readonly root: HTMLElement) {}

  update(bench: Workbench): void {
    this.root.replaceChildren(bench.current.design.name);
  }
}
