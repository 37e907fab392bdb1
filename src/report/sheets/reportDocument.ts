import { plainText } from '../../words/plainText.js';
import { baselineOf } from '../../study/compare/baseline.js';
import type { ReportDocument } from './blocks.js';
import { buyerSheet } from './buyerSheet.js';
import { shopSheets, type ShopInput } from './shopSheets.js';

/** Longest texts of a design file that fit a title line. */
const LONGEST = { name: 70, shop: 60, job: 80 };

/**
 * The whole report of one design or of several options: the buyer's page, then the shop's sheets. Pure; `reportHtml`
 * and `reportPdf` make files of it.
 */
export function reportDocument(input: ShopInput): ReportDocument {
  const { comparison, paper } = input;
  const { design, tool } = baselineOf(comparison).result;
  return {
    name: plainText(design.name, LONGEST.name),
    shop: plainText(design.shop, LONGEST.shop),
    job: plainText(design.job, LONGEST.job),
    maker: `${tool.name} ${tool.version}`,
    sheets: [buyerSheet(comparison, paper), ...shopSheets(input)],
  };
}
