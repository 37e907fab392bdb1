import { describe, expect, it } from 'vitest';
import { eachFourWays, expectRefused, FOUR_WAYS } from './fourWays.js';
import { pitwright } from './support/run.js';

const files = eachFourWays();
const { fileOf } = files;

describe('options of a design', () => {
  it.each(['compare'])('are refused by %s where one is faulty', (command) => expectRefused(files, command));
});

describe('prices', () => {
  it('in two currencies are not compared', async () => {
    const euros = fileOf('euros.yaml', (tree) => {
      delete tree.options;
      tree.prices = { steel: '2 €/kg' };
    });
    const { code, stdout, stderr } = await pitwright(['compare', FOUR_WAYS, euros]);
    expect({ code, stdout }).toEqual({ code: 3, stdout: '' });
    expect(stderr).toMatch(/'\$' and '€'/);
  });
});
