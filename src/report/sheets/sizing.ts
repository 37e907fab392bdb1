import { format } from '../../units/index.js';
import type { SizeResult } from '../../study/size/size.js';
import { choicesData, choiceWords, whyNothingFits } from '../text/sizeText.js';
import type { ShopInput } from './shopSheets.js';

/** Sizes from stock, as the report tells them: what is best, and the choices beside it. */
export function sizingOf(result: SizeResult): NonNullable<ShopInput['sizing']> {
  const { wanted, choices, chosen } = result;
  const fire = `${format('power', wanted.fullFire_W)}, held at ${format('temperature', wanted.target_K)}`;
  const text =
    chosen === null
      ? `For a full fire of ${fire} nothing from stock keeps within every limit: ${whyNothingFits(result).join('; ')}.`
      : `For a full fire of ${fire} the best from stock: ${choiceWords(result, choices[chosen], 'shop')}. ` +
        'Each choice is solved in full, best first; limits are common practice without a source, or estimates.';
  return { text, table: { ...choicesData(result, 'shop'), caption: 'Choices from stock' } };
}
