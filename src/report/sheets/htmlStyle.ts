import { fontFace } from '../../draw/sceneSvg.js';
import { FAINT_INK, FONT_STACK, GRID, INK, PAPER, SHEET, SHEETS, type PaperName } from '../../draw/theme.js';
import { FOOT_WORDS } from './blocks.js';

/** Narrower than this a picture's lettering is too small to read [px]. */
const READABLE = 400;
/** Heights that the pictures of the buyer's page keep with their captions, and need at most [px]. */
const LEAST = 200;
const MOST = 360;

/** The foot of a printed page. @param content as a style sheet has it */
function foot(side: 'left' | 'right', content: string): string {
  return `@bottom-${side}{content:${content};font:400 ${SHEET.small - 1}px ${FONT_STACK};color:${FAINT_INK}}`;
}

/**
 * The report's style sheet: the sheets lie on a desk on a screen, and fill the pages on paper, with the same content.
 */
export function sheetStyle(paper: PaperName, fonts: { weight: number; base64: string }[]): string {
  const { width, height, css } = SHEETS[paper];
  const { margin, gap } = SHEET;
  return [
    ...fonts.map(fontFace),
    `:root{color-scheme:light}`,
    `*{box-sizing:border-box}`,
    `html{background:${SHEET.desk};-webkit-text-size-adjust:100%}`,
    `body{margin:0;color:${INK};font:400 ${SHEET.text}px/1.4 ${FONT_STACK};font-variant-numeric:tabular-nums;` +
      `-webkit-print-color-adjust:exact;print-color-adjust:exact}`,
    `main{padding:24px 0}`,
    `.sheet{width:${width}px;min-height:${height}px;margin:0 auto 24px;padding:${margin}px;background:${PAPER};` +
      `box-shadow:0 1px 6px rgba(31,41,51,.25)}`,
    `.one{height:${height}px;overflow:hidden;display:flex;flex-direction:column;gap:${gap}px}`,
    // on a screen a sheet behind the buyer's is as long as what it says
    `.flow{min-height:0}.flow>*+*,.together>*+*{margin-top:${gap * 1.4}px}`,
    `header{display:flex;justify-content:space-between;align-items:flex-end;gap:24px;` +
      `border-bottom:${SHEET.rule}px solid ${INK};padding-bottom:7px}`,
    `header p,h1,h2,h3,figure,ul,table{margin:0}`,
    `header>div{min-width:0;overflow-wrap:anywhere}`,
    `.shop{font-size:${SHEET.shop}px;font-weight:600;line-height:1.15}`,
    `h1{font-size:${SHEET.title}px;font-weight:500;color:${FAINT_INK}}`,
    `h2{font-size:${SHEET.shop - 2}px;font-weight:600;line-height:1.2}`,
    `.minor{font-size:${SHEET.text}px;font-weight:600}`,
    `.aside{text-align:right;color:${FAINT_INK};max-width:46%}`,
    `p{margin:0}`,
    `.lead{font-size:${SHEET.lead}px;font-weight:500;line-height:1.32}`,
    `.small{font-size:${SHEET.small}px;line-height:1.35}`,
    `ul{padding-left:1.3em}li+li{margin-top:3px}`,
    `svg{display:block;width:100%;height:auto}`,
    `figcaption{color:${FAINT_INK};font-size:${SHEET.small}px;margin-top:2px}`,
    // figures that take what is left: their pictures shrink, their captions stay
    `.one>.flexible{flex:1 1 0;min-height:${LEAST}px;max-height:${MOST}px}`,
    `.flexible>div,figure.flexible{display:flex;flex-direction:column}.flexible figure{flex:1 1 0;min-height:0}`,
    `.flexible .picture{flex:1 1 0;min-height:0;position:relative}`,
    `.flexible svg{position:absolute;inset:0;height:100%}`,
    `table{border-collapse:collapse;width:100%;line-height:1.25}`,
    `caption{text-align:left;font-weight:600;padding-bottom:4px;caption-side:top}`,
    `th,td{text-align:right;font-weight:400;padding:2.2px 0 2.2px 12px;vertical-align:baseline;overflow-wrap:anywhere}`,
    `th.l,td.l,tbody th{text-align:left}`,
    `th:first-child,td:first-child{padding-left:0}`,
    `thead th,thead td{font-weight:600;border-bottom:1px solid ${INK}}`,
    `tbody tr+tr>*{border-top:1px solid ${GRID}}`,
    `tbody tr:last-child>*{border-bottom:1px solid ${GRID}}`,
    `small{color:${FAINT_INK};font-size:${SHEET.small}px;white-space:nowrap}`,
    `.columns{display:flex;gap:${SHEET.gutter}px}.columns>div{flex:1 1 0;min-width:0}`,
    ...[2, 3, 4, 5, 6].map((share) => `.columns>.w${share}{flex-grow:${share}}`),
    `.one .columns .minor{border-top:1px solid ${INK};padding-top:4px;margin-bottom:1px}`,
    // on paper pages are counted, as the PDF counts its own
    `@page{size:${css};margin:${margin}px;${foot('left', `"${FOOT_WORDS}"`)}` +
      `${foot('right', '"page " counter(page) " of " counter(pages)')}}`,
    `@media print{html{background:none}main{padding:0}.count{display:none}` +
      `.sheet{width:auto;min-height:0;margin:0;padding:0;box-shadow:none}` +
      // a hair less than the page, so that rounding never starts another
      `.one{height:${height - 2 * margin - 1}px}` +
      // the sheets behind run on, so that none leaves a page nearly empty
      `.one+.flow{break-before:page}.flow+.flow{margin-top:${2.6 * gap}px}` +
      `header,table,tr,figure,.one{break-inside:avoid}.columns table,.long{break-inside:auto}thead{display:table-header-group}` +
      `.together{break-inside:avoid}header,caption,.minor{break-after:avoid}}`,
    // a narrow screen scrolls the drawings down, not across
    `@media screen and (max-width:${width}px){main{padding:0}.sheet{width:auto;height:auto;min-height:0;margin:0 0 12px;` +
      `padding:16px}.one{display:block}.one>*+*{margin-top:14px}.one>.flexible{max-height:none}` +
      `.flexible>div,figure.flexible{display:block}.flexible svg{position:static;height:auto}` +
      `body{font-size:14px}.small,small,figcaption{font-size:12.5px}.columns{flex-wrap:wrap}.columns>div{flex-basis:240px}` +
      // a number is never broken; what is wider than the screen scrolls in its own frame
      `table{display:block;overflow-x:auto}th,td{overflow-wrap:normal;padding-left:8px}` +
      `.picture{overflow-x:auto}.picture svg{min-width:${READABLE}px}.flow .picture svg{min-width:${READABLE + 120}px}}`,
  ].join('\n');
}
