import { candidateFields } from '../../../src/study/size/candidate.js';
import { stackTries, surveyStack } from '../../../src/study/size/search.js';
import { writeOut } from '../../../src/study/size/size.js';
import { designOf } from '../../design/designFiles.js';
import { treeOf } from './asked.js';

const settings = { cleanAir: 2.5 };
/** The fields of the first size that is written out for a design. */
export async function firstFields(text: string) {
  const design = designOf(text);
  const tries = stackTries(design).map((each) => ({ of: 0, ...each }));
  const surveys = tries.map((each) => surveyStack(design, each, settings));
  const tree = treeOf(text);
  const { written } = await writeOut(tree, design, { tries, surveys });
  const [{ candidate, design: sized }] = written;
  return { tree, sized, fields: candidateFields(tree, candidate, 1) };
}
