/** The page before its script runs: what it holds, what it may do, and how it looks. Put together when the bundle is built. */
import { CAUTIONS, NOT_A_GUARANTEE } from '../report/cautions.js';
import { escapeMarkup } from '../charts/sceneSvg.js';
import { heatColour } from '../charts/drawingScene.js';
import { HEAT_STEPS } from './look.js';

export interface ShellParts {
  /** style sheet, fonts filled in */
  style: string;
  /** the few lines that unpack the rest */
  boot: string;
  /** page and worker scripts, gzip in base64 */
  page: string;
  worker: string;
  /** 'sha256-...' of style and boot, in base64 */
  hashes: { style: string; boot: string };
}

/** Where `pitwright page` puts a design, as JSON text. */
export const DESIGN_SLOT = '<script type="application/json" id="design">null</script>';

/** Colours of the temperature scale as properties: light to dark by day, dark to light by night, so that hot stands out. */
export function heatProperties(): string {
  const steps = Array.from({ length: HEAT_STEPS + 1 }, (_, i) => i);
  const day = steps.map(
    (i) => `--heat-${i}:${heatColour(i / HEAT_STEPS)};--on-heat-${i}:${i > 7 ? '#ffffff' : '#1f2933'}`,
  );
  const night = steps.map(
    (i) => `--heat-${i}:${nightHeat(i / HEAT_STEPS)};--on-heat-${i}:${i > 5 ? '#0b1a26' : '#e9f0f5'}`,
  );
  return (
    `:root{${day.join(';')}}\n@media (prefers-color-scheme: dark){:root{${night.join(';')}}}\n` +
    `@media print{:root{${day.join(';')}}}\n`
  );
}

/** From the blueprint's ground to a bright ember, by straight mixing. */
function nightHeat(share: number): string {
  const [cold, hot] = [
    [28, 60, 86],
    [255, 190, 120],
  ];
  return `rgb(${cold.map((from, k) => Math.round(from + share * (hot[k] - from))).join(' ')})`;
}

export function shellHtml({ style, boot, page, worker, hashes }: ShellParts): string {
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
<div class="tools" role="group" aria-label="Design file and printing">
<label class="button" for="open">Open a design<input class="unseen" id="open" type="file" accept=".yaml,.yml,.json,.txt"></label>
<button type="button" id="save">Save the design</button>
<button type="button" id="print">Print the buyer's sheet</button>
</div>
</header>
<main>
<section id="controls" aria-labelledby="controls-title"><h2 id="controls-title">The pit</h2><div id="fields"></div></section>
<section id="messages" role="alert" hidden></section>
<section id="verdict" aria-labelledby="verdict-title"><h2 id="verdict-title">What it does</h2><div id="sentences"><p id="waiting">Getting ready ...</p></div><ul id="warnings" aria-label="Warnings"></ul></section>
<section aria-labelledby="drawing-title"><h2 id="drawing-title">Drawing to scale, with thermometers while it holds</h2><div id="drawing"></div><div class="title-block" id="title-block"></div></section>
<section id="curves" aria-labelledby="chart-title"><h2 id="chart-title">Curves</h2><div class="strip" role="group" aria-label="Which curves" id="chart-choice"></div><p id="chart-caption"></p><div id="chart"></div>
<details id="chart-details"><summary>The same as a table</summary><div class="scroll" role="region" tabindex="0" aria-label="The curves as a table"><table id="chart-table"></table></div></details></section>
<section id="numbers" tabindex="-1" aria-labelledby="numbers-title"><h2 id="numbers-title">Numbers, option by option</h2><div class="strip"><button type="button" id="add">Keep this and start another option</button></div>
<div class="scroll" role="region" tabindex="0" aria-labelledby="numbers-title"><table id="number-table"></table></div></section>
</main>
<footer><p>Every number here is ${escapeMarkup(NOT_A_GUARANTEE)}. It comes from the same computation as the command's.</p><p>${escapeMarkup(CAUTIONS)}</p></footer>
<dl id="readout" aria-hidden="true"></dl>
<p class="unseen" role="status" id="status"></p>
<div id="buyer"></div>
<noscript><p>This page computes in your browser: it needs scripts switched on. Nothing leaves it.</p></noscript>
${DESIGN_SLOT}
<script type="application/octet-stream" id="code-page">${page}</script>
<script type="application/octet-stream" id="code-worker">${worker}</script>
<script>${boot}</script>
</body>
</html>
`;
}
