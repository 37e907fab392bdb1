/** The units that a person wants to read, kept in the browser. */
import type { UnitChoice } from '../units/choice.js';
import { part } from './dom.js';

/** In brackets where there is room; charts have an axis of each. */
export const UNIT_CHOICES: Record<UnitChoice, string> = {
  both: 'Shop and SI units',
  shop: 'Shop units',
  si: 'SI units',
};

const KEY = 'units-of-pitwright';

export class UnitMenu {
  private readonly menu = part<HTMLSelectElement>('units');

  /** @param chosen told of another choice */
  constructor(chosen: (choice: UnitChoice) => void) {
    this.menu.addEventListener('change', () => {
      try {
        localStorage.setItem(KEY, this.choice);
      } catch {
        // not allowed: it holds until the page is closed
      }
      chosen(this.choice);
    });
  }

  get choice(): UnitChoice {
    return this.menu.value as UnitChoice;
  }

  /** Brings back what was chosen when a page was last open. */
  recall(): UnitChoice {
    try {
      const kept = localStorage.getItem(KEY);
      if (kept !== null && kept in UNIT_CHOICES) this.menu.value = kept;
    } catch {
      // not allowed
    }
    return this.choice;
  }
}
