import { format } from '../../units/index.js';
import type { SizeResult } from '../../study/size/size.js';
import { constraintLines } from '../text/sizeCosts.js';
import { choicesData, rankedBy } from '../text/sizeChoices.js';
import { againstDrawing, choiceWords, drawnWords, whyNothingFits } from '../text/sizeAnswer.js';
import type { ShopInput } from './shopSheets.js';

/**
 * Sizes, as the report tells them: the drawing, what is best, what is asked for and its cost, and the choices beside
 * it.
 */
export function sizingOf(result: SizeResult): NonNullable<ShopInput['sizing']> {
  const { wanted, choices, chosen } = result;
  const fire = `${format('power', wanted.fullFire_W)}, held at ${format('temperature', wanted.target_K)}`;
  const from = result.design.size?.onHand ? 'what is on hand' : 'stock';
  const best =
    chosen === null
      ? `For a full fire of ${fire} nothing from ${from} keeps within every limit: ${whyNothingFits(result).join('; ')}.`
      : `For a full fire of ${fire} the best from ${from}: ${choiceWords(result, choices[chosen], 'shop')}. ` +
        'Each choice is solved in full, best first; limits are common practice without a source, or estimates.';
  const asked = constraintLines(result, (choice) => choiceWords(result, choice, 'shop'), 'shop');
  const versus = chosen === null ? [] : againstDrawing(result, choices[chosen], 'shop');
  const text = [drawnWords(result, 'shop'), best, ...versus, ...asked, rankedBy(result)].join(' ');
  return { text, table: { ...choicesData(result, 'shop'), caption: 'Choices' } };
}
