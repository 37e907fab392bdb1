import { describe, expect, it } from 'vitest';
import { gatherEvidence, type Evidence } from '../../src/verify/evidence.js';
import { evidenceJson } from '../../src/report/evidence/evidenceJson.js';
import { evidencePictures } from '../../src/report/evidence/evidencePictures.js';
import { evidenceReport } from '../../src/report/evidence/evidenceReport.js';
import { evidenceSummary } from '../../src/report/evidence/evidenceText.js';
import { reference } from './referenceFiles.js';

const files = reference();
const { evidence } = gatherEvidence(files) as { evidence: Evidence };
const report = (of: Evidence) =>
  evidenceReport(of, {
    pictures: evidencePictures(of.validation).map(({ file, about }) => ({ file: `plots/${file}.png`, about })),
  });

describe('the evidence', () => {
  it('is the same bytes twice', () => {
    const again = (gatherEvidence(reference()) as { evidence: Evidence }).evidence;
    expect(report(again)).toBe(report(evidence));
    expect(evidenceJson(again)).toBe(evidenceJson(evidence));
  });

  it('fails on a miss without a reason, and on a reason without a miss', () => {
    const lines = files.misses.text.trim().split('\n');
    const run = (text: string) =>
      gatherEvidence({ ...files, misses: { file: 'misses.csv', text } }) as { evidence: Evidence };
    const unexplained = run(`${lines.slice(0, -1).join('\n')}\n`).evidence;
    expect(unexplained.passed).toBe(false);
    expect(unexplained.counts.miss).toBe(1);
    expect(report(unexplained)).toMatch(/\*\*FAILED\.\*\*/);
    expect(report(unexplained)).toContain('**none: this fails the run**');
    const stale = run(`${lines.join('\n')}\nair-a4-300-rho,because\n`).evidence;
    expect(stale.passed).toBe(false);
    expect(stale.counts.stale).toBe(1);
    expect(evidenceSummary(stale)).toMatch(/air-a4-300-rho stale: .*because[^]*FAILED/);
  });
});
