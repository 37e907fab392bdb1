import { gaugeLabel, placeWords } from './labels.js';
import { gaugePlace } from '../design/places.js';
import { gaugeReading } from '../study/estimate/gauge.js';
import type { EstimateResult } from '../study/estimate/result.js';
import type { UnitSystem } from '../units/index.js';
import { sayIn } from './quantity.js';
import { restsOn } from './restsOn.js';
import { capital } from './plainText.js';
import { rangeText, wordsOf } from './quantityWords.js';
import { held } from '../study/quantities.js';

/**
 * What a builder asks, answered in sentences: how long to temperature, what it takes to stay there, how it draws.
 * Nothing is rounded up or left out where the answer is 'never'. Last, what measured cook it rests on, if any.
 */
export function headline(result: EstimateResult, system: UnitSystem): string[] {
  const { design, steady, assumed, warmUp, warnings } = result;
  const say = sayIn(system);
  const target = say('temperature', design.fire.target);
  const gauge = `the ${gaugeLabel(design.gauge)}`;
  const sentences: string[] = [];
  /** how sure a number is, where that was studied */
  const sure = (key: string) => {
    const number = result.spread?.numbers.find((each) => each.key === key);
    return number ? ` (8 of 10 cases: ${rangeText(number, design, system)})` : '';
  };

  if (assumed) {
    const fire = `${say('power', assumed.fire_W)} or ${say('massFlow', assumed.wood_kg_per_s)} of wood`;
    const from = `Under the full fire, ${fire},`;
    if (warmUp?.gauge_s != null) {
      const soaked =
        warmUp.soaked_s == null
          ? 'The pit is not soaked within the time computed.'
          : `The steel is soaked after ${say('time', warmUp.soaked_s)}${sure('soaked_s')}.`;
      sentences.push(
        `${from} ${gauge} first reads ${target} after ${say('time', warmUp.gauge_s)} at the earliest${sure('gauge_s')}. ${soaked}`,
      );
    } else {
      const reading = gaugeReading(assumed, design.gauge);
      const settles = say('temperature', reading);
      sentences.push(
        reading !== null && reading > design.fire.target && warnings.some(({ code }) => code === 'draft-tips-over')
          ? `${from} ${gauge} would settle at ${settles}, but its way to ${target} could not be followed; the warnings say why.`
          : `${from} ${gauge} never reads ${target}: it settles at ${settles}.`,
      );
    }
  } else {
    sentences.push(
      `This pit can't burn the fire it is given (${say('power', design.fire.heat)}); the warnings say why.`,
    );
  }

  if (steady) {
    const wood = `${say('massFlow', steady.wood_kg_per_s)} of wood${sure('hold.wood_kg_per_s')}`;
    const hold = `${wood}: ${say('power', steady.fire_W)}${sure('hold.fire_W')}`;
    const base = steady.draft.stackBase_Pa;
    const pressure = say('pressure', Math.abs(base), { digits: 2 });
    const draft =
      base >= 0
        ? `${capital(wordsOf(held('stackBase_Pa'), 'row'))} is then ${pressure}${sure('hold.stackBase_Pa')}.`
        : `Under the stack base the gas then pushes outwards with ${pressure}: gaps up there leak smoke.`;
    sentences.push(`Holding ${target} there takes ${hold}, which is what the pit loses. ${draft}`);
    const { part } = gaugePlace(design);
    const cooking = steady.places.filter((place) => place.part === part && place.kind !== 'thermometer');
    const reads = cooking.map((place) => `${say('temperature', place.thermometer_K)} at ${placeWords(place)}`);
    if (reads.length > 0) {
      sentences.push(`Meanwhile a probe where the food lies reads ${reads.join(', ')}.`);
    }
  } else {
    sentences.push(`No fire holds ${target} at ${gauge}; the warnings say why.`);
  }
  const measured = restsOn(design, system);
  if (measured !== null) sentences.push(measured);
  return sentences;
}
