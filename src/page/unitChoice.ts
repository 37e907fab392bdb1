/** The units that a person wants to read, kept in the browser. */
import type { UnitSystem } from '../units/index.js';
import { part } from './dom.js';

/** Shop units, SI, or shop units with SI in brackets where there is room. */
export const UNIT_CHOICES = { both: 'Shop and SI units', shop: 'Shop units', si: 'SI units' } as const;
export type UnitChoice = keyof typeof UNIT_CHOICES;

const KEY = 'units-of-pitwright';

/** Units of running text. */
export function systemOf(choice: UnitChoice): UnitSystem {
  return choice === 'si' ? 'si' : 'shop';
}

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
