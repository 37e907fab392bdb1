import { readFileSync } from 'node:fs';
import { formatFaults } from '../../design/faults.js';
import { readDesign } from '../../design/read.js';
import { textWithFitted } from '../../design/readFitted.js';
import { DESIGN_SLOT, designJson } from '../../page/slot.js';
import { exit, Stop } from '../exit.js';
import { readText } from '../input.js';
import { filesBeside } from '../namedFile.js';
import { openSink, refuseClashes } from '../output.js';
import { showPage } from '../showPage.js';

/** Where the page is written, and whether it is opened. */
export interface PageOptions {
  output?: string;
  open?: boolean;
}

/** The interactive page as one file, or shown in a browser; with a design, it starts with that one. */
export async function run(path: string | undefined, options: PageOptions): Promise<void> {
  const { output, open } = options;
  if (output === undefined && !open && process.stdout.isTTY) {
    throw new Stop(exit.wrongUsage, 'the page is a file for a browser: give -o FILE to write it, or --open to see it.');
  }
  if (path !== undefined) refuseClashes(path, { '--output': output });
  const design = path === undefined ? undefined : await designText(path);
  const out = output !== undefined || !open ? openSink(output ?? '-') : undefined;
  const html = withDesign(pageTemplate(), design);
  // a page is no text for a terminal: its script stays as it was bundled
  await out?.write(Buffer.from(html));
  if (open) await showPage(html);
}

/** @throws Stop (wrong input) with every fault, also of units that the command knows and the page doesn't */
async function designText(path: string): Promise<string> {
  const { text, fileName } = await readText(path);
  const namedFile = filesBeside(fileName);
  const { faults } = readDesign(text, { fileName, namedFile });
  if (faults) {
    const units = faults.some(({ code }) => code === 'unknown-unit') ? ' (the page knows the units of the trade)' : '';
    throw new Stop(exit.wrongInput, `${fileName}: faults in the design${units}\n${formatFaults(faults)}`);
  }
  return textWithFitted(text, namedFile);
}

function withDesign(html: string, design: string | undefined): string {
  if (design === undefined) return html;
  const at = html.lastIndexOf(DESIGN_SLOT);
  if (at < 0) throw new Error('the page has no place for a design');
  return (
    html.slice(0, at) + DESIGN_SLOT.replace('null', () => designJson(design)) + html.slice(at + DESIGN_SLOT.length)
  );
}

/** The page that was built beside this code. */
function pageTemplate(): string {
  try {
    return readFileSync(new URL('../page.html', import.meta.url), 'utf8');
  } catch {
    throw new Stop(exit.ourFault, 'the page is missing from this installation. Install it again.');
  }
}
