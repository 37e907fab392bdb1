/** Seeded ways to spoil a log, each with how many rows it may have made to read otherwise than they were. */
import { HEADER, READINGS, GOOD, ROWS } from './logTexts.js';

export interface Spoiled {
  header: string[];
  rows: string[];
  /** what the whole text goes through at last */
  last: ((text: string) => string)[];
  /** rows of which a cell was changed: so many readings a column may differ from the original */
  touched: number;
  /** a column as a whole means something else now, and is right to */
  otherUnit: boolean;
}

export function unspoiled(): Spoiled {
  return {
    header: [...HEADER],
    rows: GOOD.map((row) => row.join(',')),
    last: [],
    touched: 0,
    otherUnit: false,
  };
}

export class Dice {
  constructor(private readonly next: () => number) {}

  /** 0 to below n */
  below(n: number): number {
    return Math.floor(this.next() * n);
  }

  pick<T>(items: readonly T[]): T {
    return items[this.below(items.length)];
  }
}

function changeCell(log: Spoiled, dice: Dice, columns: readonly number[], change: (cell: string) => string): void {
  const at = dice.below(log.rows.length);
  const cells = log.rows[at]?.split(',') ?? [];
  const column = dice.pick(columns);
  if (cells.length <= column) return;
  cells[column] = change(cells[column]);
  log.rows[at] = cells.join(',');
  log.touched++;
}

const times = (dice: Dice, most: number, what: () => void): void => {
  for (let n = 1 + dice.below(most); n > 0; n--) what();
};

const GARBAGE = [
  'x',
  '??',
  '1.2.3',
  '2 2 5',
  '°F',
  '225 °G',
  '0x1F',
  '١٢',
  '½',
  '=A1',
  "'225",
  '225,',
  '\u0007',
  '--5',
  '1e',
  '🔥',
];
const HUGE = ['1e308', '-1e308', '9e99', '99999', '1e400', '-459.67', '0', '00000', '123456789012345678901234567890'];
const NOTHING = ['', '---', 'NaN', 'nan', 'OL', 'ERR', 'n/a', 'null', '#N/A', '-', 'inf'];

/** Every way by name. */
export const MUTATIONS: Readonly<Record<string, (log: Spoiled, dice: Dice) => void>> = {
  'drops rows': (log, dice) => times(dice, 80, () => log.rows.splice(dice.below(log.rows.length), 1)),
  'drops a stretch': (log, dice) => void log.rows.splice(dice.below(log.rows.length), dice.below(400)),
  'drops nearly all': (log, dice) => void log.rows.splice(1 + dice.below(60)),
  'duplicates rows': (log, dice) =>
    times(dice, 40, () => {
      const at = dice.below(log.rows.length);
      log.rows.splice(dice.pick([at, log.rows.length]), 0, log.rows[at]);
    }),
  'swaps rows': (log, dice) =>
    times(dice, 3, () => {
      const [a, b] = [dice.below(log.rows.length), dice.below(log.rows.length)];
      [log.rows[a], log.rows[b]] = [log.rows[b], log.rows[a]];
    }),
  'shuffles all rows': (log, dice) => {
    for (let i = log.rows.length - 1; i > 0; i--) {
      const j = dice.below(i + 1);
      [log.rows[i], log.rows[j]] = [log.rows[j], log.rows[i]];
    }
  },
  'moves a block': (log, dice) => {
    const block = log.rows.splice(dice.below(log.rows.length), 1 + dice.below(300));
    log.rows.splice(dice.below(log.rows.length), 0, ...block);
  },
  'turns the rows round': (log) => void log.rows.reverse(),
  'cuts bytes': (log, dice) => {
    const [at, length] = [dice.below(40_000), 1 + dice.below(dice.pick([4, 40, 4000]))];
    log.last.push((text) => text.slice(0, at) + text.slice(at + length));
    log.touched += 2;
  },
  'cuts the end off': (log, dice) => {
    const share = 0.02 + 0.98 * (dice.below(1000) / 1000);
    log.last.push((text) => text.slice(0, Math.floor(share * text.length)));
    log.touched++;
  },
  'changes all separators': (log, dice) => {
    const mark = dice.pick([';', '\t', '|', ' ', ' , ', ',\u00a0']);
    log.last.push((text) => text.replace(/,/g, mark));
  },
  'changes separators of rows': (log, dice) =>
    times(dice, 30, () => {
      const at = dice.below(log.rows.length);
      log.rows[at] = log.rows[at]?.replace(/,/g, dice.pick([';', '\t', ' ', ',,'])) ?? '';
    }),
  'garbles cells': (log, dice) =>
    times(dice, 30, () => changeCell(log, dice, [0, ...READINGS, 5], () => dice.pick(GARBAGE))),
  'garbles wood': (log, dice) => changeCell(log, dice, [4], () => dice.pick([...GARBAGE, ...HUGE])),
  'flips a character': (log, dice) =>
    times(dice, 10, () =>
      changeCell(log, dice, [0, ...READINGS], (cell) => {
        const at = dice.below(cell.length);
        return cell.slice(0, at) + dice.pick([...'0123456789.,-x ']) + cell.slice(at + 1);
      }),
    ),
  'writes huge numbers': (log, dice) =>
    times(dice, 20, () => changeCell(log, dice, [0, ...READINGS], () => dice.pick(HUGE))),
  'writes no reading': (log, dice) => times(dice, 200, () => changeCell(log, dice, READINGS, () => dice.pick(NOTHING))),
  'makes times negative': (log, dice) => {
    const by = dice.pick([500, 20_000, 1e6]);
    log.rows = log.rows.map((row) => row.replace(/^\d+/, (time) => String(Number(time) - by)));
  },
  'makes a time negative': (log, dice) => changeCell(log, dice, [0], (cell) => `-${cell}`),
  'restarts the clock': (log, dice) => {
    const at = 1 + dice.below(log.rows.length);
    const from = Number(/^\d+/.exec(log.rows[at] ?? '')?.[0] ?? NaN);
    if (!Number.isFinite(from)) return;
    log.rows = log.rows.map((row, i) => (i < at ? row : row.replace(/^\d+/, (time) => String(Number(time) - from))));
  },
  'swaps units': (log, dice) => {
    const column = dice.pick([0, ...READINGS].filter((each) => each < log.header.length));
    const unit = column === 0 ? dice.pick(['min', 'h', 'ms', 'd']) : dice.pick(['°C', 'K', 'psi', 'C', '']);
    log.header[column] = log.header[column].replace(/\[.*\]/, `[${unit}]`);
    log.otherUnit = true;
  },
  'blanks headers': (log, dice) => times(dice, 3, () => void (log.header[dice.below(log.header.length)] = '')),
  'garbles the header': (log, dice) => {
    const at = dice.below(log.header.length);
    const place = dice.below(log.header[at].length);
    log.header[at] = log.header[at].slice(0, place) + dice.pick([...'aeiou xzq[]']) + log.header[at].slice(place + 1);
    log.otherUnit = true;
  },
  'loses the header': (log) => void (log.header = []),
  'repeats the header': (log, dice) =>
    times(dice, 5, () => log.rows.splice(dice.below(log.rows.length), 0, log.header.join(','))),
  'repeats a column': (log, dice) => {
    const at = dice.below(log.header.length);
    log.header.push(log.header[at]);
    log.rows = log.rows.map((row) => `${row},${row.split(',')[at] ?? ''}`);
  },
  'leaves a column out': (log, dice) => {
    const at = dice.below(log.header.length);
    log.header.splice(at, 1);
    log.rows = log.rows.map((row) => row.split(',').toSpliced(at, 1).join(','));
  },
  'adds a column of its own': (log, dice) => {
    log.header.unshift(dice.pick(['Food [°F]', 'bat', '#', 'Lid']));
    log.rows = log.rows.map((row, i) => `${i % 7},${row}`);
  },
  'opens quotes': (log, dice) => {
    const at = dice.below(40_000);
    log.last.push((text) => `${text.slice(0, at)}"${text.slice(at)}`);
    log.touched++;
  },
  'writes bytes': (log, dice) => {
    const [at, count] = [dice.below(40_000), 1 + dice.below(dice.pick([3, 30, 30_000]))];
    const bytes = Array.from({ length: count }, () =>
      String.fromCharCode(dice.pick([0, 1, 7, 27, 0xfffd, 0x80, 65, 13])),
    ).join('');
    log.last.push((text) => text.slice(0, at) + bytes + text.slice(at));
    log.touched += 2;
  },
  'mixes formats': (log, dice) =>
    times(dice, 60, () =>
      changeCell(log, dice, READINGS, (cell) =>
        dice.pick([
          `${cell} °F`,
          `"${cell.replace('.', ',')}"`,
          `${cell}F`,
          `${Number(cell).toExponential(3)}`,
          `+${cell}`,
        ]),
      ),
    ),
  'writes clock times': (log) => {
    log.rows = log.rows.map((row, i) =>
      i % 3 ? row : row.replace(/^\d+/, (time) => `0:${String(Math.floor(Number(time) / 60)).padStart(2, '0')}:00`),
    );
    log.touched += ROWS;
  },
  'changes line ends': (log, dice) => {
    const end = dice.pick(['\r\n', '\r', '\n\n', '\n#\n']);
    log.last.push((text) => text.replace(/\n/g, end));
  },
  'joins lines': (log, dice) => {
    const at = dice.below(1000);
    log.last.push((text) => {
      const lines = text.split('\n');
      return [...lines.slice(0, at), lines.slice(at, at + 2).join(''), ...lines.slice(at + 2)].join('\n');
    });
    log.touched += 2;
  },
  'sticks a probe': (log, dice) => {
    const [column, from] = [dice.pick(READINGS), dice.below(ROWS)];
    const value = log.rows[from]?.split(',')[column] ?? '0';
    log.rows = log.rows.map((row, i) => (i < from ? row : row.split(',').toSpliced(column, 1, value).join(',')));
    log.touched += ROWS;
  },
  'empties the file': (log, dice) => {
    const left = dice.pick(['', '\n', '\uFEFF', ' , , \n', '#\n']);
    log.last.push(() => left);
  },
};

export function textOf(log: Spoiled): string {
  const lines = log.header.length > 0 ? [log.header.join(','), ...log.rows] : log.rows;
  return log.last.reduce((text, change) => change(text), `${lines.join('\n')}\n`);
}
