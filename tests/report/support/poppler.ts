import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const TOOLS = ['pdftotext', 'pdftoppm', 'pdffonts', 'pdfinfo', 'pdftohtml'];

/** Whether this machine can read PDFs back; said loudly where it can't, and an error under CI. */
export function canReadPdf(): boolean {
  const lacking = TOOLS.filter((tool) => spawnSync(tool, ['-v']).error !== undefined);
  if (lacking.length === 0) return true;
  const told = `NO ${lacking.join(', ')} (poppler-utils), so PDFs were NOT read back`;
  if (process.env.CI) throw new Error(told);
  process.stderr.write(`\n${'!'.repeat(70)}\n${told}\n${'!'.repeat(70)}\n\n`);
  return false;
}

function run(tool: string, args: string[]): string {
  const { status, stdout, stderr } = spawnSync(tool, args, { encoding: 'utf8', maxBuffer: 1e8 });
  if (status !== 0) throw new Error(`${tool}: ${stderr}`);
  return stdout;
}

/**
 * A PDF read back: its text page by page, what its fonts are, how dark each page is, and what a screen reader gets of
 * it.
 */
export function readPdf(pdf: Buffer) {
  const folder = mkdtempSync(join(tmpdir(), 'pitwright-pdf-'));
  try {
    const file = join(folder, 'report.pdf');
    writeFileSync(file, pdf);
    const info = run('pdfinfo', [file]);
    const pages = run('pdftotext', ['-layout', file, '-']).split('\f').slice(0, -1);
    const fonts = run('pdffonts', [file]).trim().split('\n').slice(2);
    run('pdftoppm', ['-r', '36', '-gray', file, join(folder, 'page')]);
    const drawn = pages.map((_, i) => readFileSync(join(folder, `page-${pad(i + 1, pages.length)}.pgm`)));
    const size = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(info)!;
    const outline = [...run('pdftohtml', ['-xml', '-stdout', '-i', file]).matchAll(/<item page="(\d+)">(.*)<\/item>/g)];
    return {
      pages,
      fonts,
      info,
      ink: drawn.map(inkOf),
      outline: outline.map(([, page, title]) => ({ page: Number(page), title })),
      tags: tagsOf(run('pdfinfo', ['-struct-text', file])),
      meta: run('pdfinfo', ['-meta', file]),
      width: Number(size[1]),
      height: Number(size[2]),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** How far down each page its content reaches, its foot aside: 0 the upper edge, 1 the lower. */
export function reachOfPages(pdf: Buffer): number[] {
  const folder = mkdtempSync(join(tmpdir(), 'pitwright-pdf-'));
  try {
    writeFileSync(join(folder, 'report.pdf'), pdf);
    run('pdftoppm', ['-r', '24', '-gray', join(folder, 'report.pdf'), join(folder, 'page')]);
    const drawn = readdirSync(folder).filter((name) => name.endsWith('.pgm'));
    return drawn.sort().map((name) => reachOf(readFileSync(join(folder, name))));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export interface Tag {
  name: string;
  text: string;
  scope?: string;
  children: Tag[];
}

/** The tree of tags from what pdfinfo prints: two spaces a level, texts in quotes, attributes with a slash. */
function tagsOf(printed: string): Tag {
  const root: Tag = { name: '', text: '', children: [] };
  const open = [root];
  for (const line of printed.split('\n')) {
    const text = /^\s*"(.*)"$/.exec(line);
    const scope = /^\s*\/Scope \/(\w+)/.exec(line);
    const tag = /^( *)(\w+)(?: \(\w+\))?:?$/.exec(line);
    if (text) open[open.length - 1].text += text[1];
    else if (scope) open[open.length - 1].scope = scope[1];
    else if (tag) {
      open.length = tag[1].length / 2 + 1;
      const child = { name: tag[2], text: '', children: [] };
      open[open.length - 1].children.push(child);
      open.push(child);
    }
  }
  return root;
}

/** Every tag of a tree, in the order they are read. */
export function walk(tag: Tag): Tag[] {
  return [tag, ...tag.children.flatMap(walk)];
}

function pad(page: number, count: number): string {
  return String(page).padStart(String(count).length, '0');
}

/** Share of the pixels of a binary PGM that aren't paper. */
function inkOf(pgm: Buffer): number {
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 40).toString('latin1'))!;
  const pixels = pgm.subarray(header[0].length);
  return pixels.reduce((dark, value) => dark + (value < 240 ? 1 : 0), 0) / pixels.length;
}

function reachOf(pgm: Buffer): number {
  const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 40).toString('latin1'))!;
  const pixels = pgm.subarray(head.length);
  let last = Math.floor(Number(height) * 0.93);
  const row = () => pixels.subarray(last * Number(width), (last + 1) * Number(width));
  while (last > 0 && row().every((value) => value >= 240)) last--;
  return last / Number(height);
}
