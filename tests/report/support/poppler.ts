import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const TOOLS = ['pdftotext', 'pdftoppm', 'pdffonts', 'pdfinfo'];

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

/** A PDF read back: its text page by page, what its fonts are, and how dark each page is. */
export function readPdf(pdf: Buffer) {
  const folder = mkdtempSync(join(tmpdir(), 'pitwright-pdf-'));
  try {
    const file = join(folder, 'report.pdf');
    writeFileSync(file, pdf);
    const info = run('pdfinfo', [file]);
    const pages = run('pdftotext', ['-layout', file, '-']).split('\f').slice(0, -1);
    const fonts = run('pdffonts', [file]).trim().split('\n').slice(2);
    run('pdftoppm', ['-r', '36', '-gray', file, join(folder, 'page')]);
    const ink = pages.map((_, i) => inkOf(readFileSync(join(folder, `page-${pad(i + 1, pages.length)}.pgm`))));
    const size = /Page size:\s+([\d.]+) x ([\d.]+)/.exec(info)!;
    return { pages, fonts, ink, width: Number(size[1]), height: Number(size[2]) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
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
