import type { Scene } from '../../draw/scene.js';
import type { TableData } from '../text/table.js';

/** What a sheet is made of, for HTML and paper alike. */
export type Block =
  | { kind: 'heading'; text: string }
  | { kind: 'lead'; text: string }
  | { kind: 'text'; text: string; small?: boolean }
  | { kind: 'list'; items: string[]; small?: boolean }
  | { kind: 'table'; table: TableData }
  | {
      kind: 'figure';
      scene: Scene;
      caption: string;
      /** takes the height that is left over on its sheet */
      flexible?: boolean;
    }
  | {
      kind: 'columns';
      columns: Block[][];
      /** how the width is shared out, as small whole numbers; absent: alike */
      shares?: readonly number[];
      /** a figure a column, which take the height that is left over on their sheet */
      flexible?: boolean;
    };

/** What stands at the foot of every page, before its number. */
export const FOOT_WORDS = 'An estimate, not a guarantee';

/** Blocks under one title. */
export interface Sheet {
  title: string;
  /** one: exactly one page; flow: as many as it takes */
  fit: 'one' | 'flow';
  blocks: Block[];
}

/** A report before it becomes HTML or PDF: both are made of the same blocks. */
export interface ReportDocument {
  /** of the design, the shop and its job line, fit for one line each */
  name: string;
  shop: string;
  job: string;
  /** what made it */
  maker: string;
  sheets: Sheet[];
}
