/**
 * Runs in a worker: charts and the buyer's sheet as plain shapes, since laying out a chart takes longer than a frame.
 */
import { plainText } from '../words/plainText.js';
import type { Sheet } from '../report/sheets/blocks.js';
import { buyerSheet } from '../report/sheets/buyerSheet.js';
import { assemble } from '../study/compare/compare.js';
import { verdictLines } from '../study/compare/verdict.js';
import { distinctLabels } from '../study/compare/distinctLabels.js';
import { USUAL_SETTINGS } from '../study/compare/studyOption.js';
import { chartPicture } from './chartPicture.js';
import { serve } from './serve.js';
import type { Pictured, PictureReply, PictureRequest } from './protocol.js';

serve<PictureRequest, PictureReply>('pictures', (request) => {
  const start = performance.now();
  const took = () => performance.now() - start;
  try {
    if (request.kind === 'chart') return { ...chartPicture(request), took: took() };
    if (request.kind === 'steps') return { ...steps(request), took: took() };
    return { kind: 'sheet', sheet: sheet(request), took: took() };
  } catch (error) {
    const fault = error instanceof Error ? error.message : String(error);
    return { kind: 'fault', fault, took: took() };
  }
});

type Asked<Kind> = Extract<PictureRequest, { kind: Kind }>;
type Untimed<Kind> = Omit<Pictured<Kind>, 'took'>;

/** What each step changes, in the words of a comparison of it with the design. */
function steps({ round, base, steps: all, system }: Asked<'steps'>): Untimed<'steps'> {
  const lines = all.map(({ id: step, label, instead, study }) => {
    const two = [
      { label: instead, changes: [], design: base.result.design },
      { label, changes: [], design: study.result.design },
    ];
    // what the design itself falls short of is said above
    const text = verdictLines(assemble(two, [base, study], USUAL_SETTINGS), system)
      .flatMap((line) => (line.label === label ? [line.text] : []))
      .join(' ');
    return { step, text };
  });
  return { kind: 'steps', round, lines };
}

/** The report's own first sheet, its first option the baseline. */
function sheet({ options, system }: Asked<'sheet'>): Sheet {
  const named = distinctLabels(options.map(({ label }) => ({ label: plainText(label, 26) || 'unnamed' })));
  const comparison = assemble(
    options.map(({ result }, i) => ({ label: named[i].label, changes: [], design: result.design })),
    options.map(({ result }) => ({ result, studies: null })),
    USUAL_SETTINGS,
  );
  return buyerSheet(comparison, 'letter', true, system);
}
