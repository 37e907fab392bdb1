/**
 * The page before its script runs: what it holds, what it may do, and how it looks. Put together when the bundle is
 * built.
 */
import { CAUTIONS, NOT_A_GUARANTEE, SOAKED_MEANS } from '../words/cautions.js';
import { escapeMarkup } from '../draw/sceneSvg.js';
import { heatColour } from '../draw/drawingScene.js';
import { INK, PAPER } from '../draw/theme.js';
import { HEAT_STEPS } from './look.js';
import { UNIT_CHOICES } from './unitChoice.js';
import { DESIGN_SLOT } from './slot.js';

interface ShellParts {
  /** style sheet, fonts filled in */
  style: string;
  /** the few lines that unpack the rest */
  boot: string;
  /** scripts of the page and its two kinds of worker, gzip in base64 */
  page: string;
  solver: string;
  pictures: string;
  /** 'sha256-...' of style and boot, in base64 */
  hashes: { style: string; boot: string };
}

/**
 * Colours of the temperature scale as properties: light to dark by day, dark to light by night, so that hot stands out.
 */
export function heatProperties(): string {
  const steps = Array.from({ length: HEAT_STEPS + 1 }, (_, i) => i);
  const scale = (colourOf: (share: number) => string, inks: readonly [string, string]) =>
    steps
      .map((i) => {
        const colour = colourOf(i / HEAT_STEPS);
        return `--heat-${i}:${colour};--on-heat-${i}:${inkOn(colour, inks)}`;
      })
      .join(';');
  const day = scale(heatColour, [INK, PAPER]);
  const night = scale((share) => heatColour(share, NIGHT_HEAT), ['#0b1a26', '#f4f8fb']);
  return `:root{${day}}\n@media (prefers-color-scheme: dark){:root{${night}}}\n` + `@media print{:root{${day}}}\n`;
}

/** Blueprint ground, ember, flame: night's scale. */
const NIGHT_HEAT = ['#1f3e58', '#8e4a3a', '#ffba70'];

/** The one of two inks that reads better on a colour: WCAG 2.2, relative luminance and contrast. */
function inkOn(colour: string, inks: readonly [string, string]): string {
  const luminance = (hex: string) =>
    [1, 3, 5].reduce((sum, at, k) => {
      const part = parseInt(hex.slice(at, at + 2), 16) / 255;
      const linear = part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
      return sum + [0.2126, 0.7152, 0.0722][k] * linear;
    }, 0);
  const contrast = (ink: string) => {
    const [a, b] = [luminance(colour), luminance(ink)].sort((x, y) => y - x);
    return (a + 0.05) / (b + 0.05);
  };
  return contrast(inks[0]) >= contrast(inks[1]) ? inks[0] : inks[1];
}

/** The page before its scripts have run. */
export function shellHtml({ style, boot, page, solver, pictures, hashes }: ShellParts): string {
  const policy = [
    "default-src 'none'",
    `script-src '${hashes.boot}' blob:`,
    'worker-src blob:',
    `style-src '${hashes.style}'`,
    'font-src data:',
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>pitwright</title>
<link rel="icon" href="data:,">
<style>${style}</style>
</head>
<body>
<a class="skip" href="#numbers">Skip to the numbers</a>
<header>
<div><h1 id="title">pitwright</h1><p class="job" id="job"></p></div>
<div class="tools" role="group" aria-label="Changes, design file and printing">
<button type="button" id="undo" disabled>Undo</button>
<button type="button" id="redo" disabled>Redo</button>
<button type="button" id="save">Save</button>
<button type="button" id="print">Print</button>
<details id="more"><summary class="button">More</summary><div class="menu">
<label class="button" for="open">Open a design file<input class="unseen" id="open" type="file" accept=".yaml,.yml,.json,.txt"></label>
<label class="button" for="open-beside">Open one beside this<input class="unseen" id="open-beside" type="file" accept=".yaml,.yml,.json,.txt"></label>
<label class="unseen" for="units">Units</label><select id="units">${Object.entries(UNIT_CHOICES)
    .map(([choice, words]) => `<option value="${choice}">${words}</option>`)
    .join('')}</select>
<button type="button" id="link">Make a link of it</button>
<button type="button" id="save-page">Save this page with it</button>
<button type="button" id="start-over">Start over</button>
</div></details>
</div>
</header>
<div id="glance" aria-hidden="true"><p id="glance-working"></p></div>
<section id="answer" aria-labelledby="answer-title"><h2 class="unseen" id="answer-title">The answer</h2>
<div id="working-on"><label for="working">Working on</label><select id="working"></select></div>
<dl id="readout"></dl></section>
<section id="notes" aria-label="Notices"><div id="messages" role="alert" hidden></div>
<div id="notice" hidden></div>
<p id="not-kept" hidden>This browser does not let the page keep your design: save it before you close or reload.</p></section>
<main>
<section id="try" aria-labelledby="try-title"><h2 id="try-title">One step of plate, and what it changes</h2><ul id="try-all"></ul>
<details id="try-by-part"><summary>Part by part</summary><ul id="try-parts"></ul></details>
<div class="strip" id="try-more" role="group" aria-label="Try beside this"></div></section>
<section id="pit" aria-labelledby="drawing-title"><h2 id="drawing-title">Drawing to scale</h2><div id="drawing"></div><div class="title-block" id="title-block"></div></section>
<section id="controls" aria-labelledby="controls-title"><h2 id="controls-title">The pit</h2><div id="fields"></div><p class="small">All that the design file gives can be changed here. A door, a face, a lining or a rack that is not there yet is added in the file: save it, write it in, open it again. What stands in it stays as it is.</p></section>
<section id="verdict" tabindex="0" aria-labelledby="verdict-title"><h2 id="verdict-title">What it does</h2><div id="sentences"><p id="waiting">Getting ready ...</p></div><ul id="warnings" aria-label="Warnings"></ul></section>
<section id="numbers" tabindex="-1" aria-labelledby="numbers-title"><h2 id="numbers-title">Numbers, option by option</h2><div class="strip"><button type="button" id="add">Keep this and start another option</button></div><p id="left-out" hidden></p>
<div class="scroll" role="region" tabindex="0" aria-label="Table of the numbers"><table id="number-table"></table></div><p>${escapeMarkup(SOAKED_MEANS)}</p></section>
<section id="curves" aria-labelledby="chart-title"><h2 id="chart-title">Curves</h2><div class="strip" role="group" aria-label="Which curves" id="chart-choice"></div><p id="chart-caption"></p><div class="strip" role="group" aria-label="Curves shown" id="chart-curves"></div><div id="chart" role="group" aria-label="The chart: arrow keys move a line that reads its curves"></div>
<div class="strip" role="group" aria-label="Save the chart"><button type="button" id="chart-svg">Save as SVG</button><button type="button" id="chart-png">Save as PNG</button><button type="button" id="chart-csv">Save as CSV</button></div>
<details id="chart-details"><summary>The same as a table</summary><div class="scroll" role="region" tabindex="0" aria-label="The curves as a table"><table id="chart-table"></table></div></details></section>
</main>
<footer><p>Every number here is ${escapeMarkup(NOT_A_GUARANTEE)}. It comes from the same computation as the command's.</p><p>${escapeMarkup(CAUTIONS)}</p></footer>
<p class="unseen" role="status" id="status"></p>
<div id="buyer"></div>
<noscript><p>This page computes in your browser: it needs scripts switched on. Nothing leaves it.</p></noscript>
${DESIGN_SLOT}
<script type="application/octet-stream" id="code-page">${page}</script>
<script type="application/octet-stream" id="code-solver">${solver}</script>
<script type="application/octet-stream" id="code-pictures">${pictures}</script>
<script>${boot}</script>
</body>
</html>
`;
}
