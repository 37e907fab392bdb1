import { describe, expect, test } from 'vitest';
import { twoLayers } from '../../src/verify/validation/twoLayers.js';
import { layeredOpeningFlow } from '../../src/verify/validation/layers.js';
import { runValidation } from '../../src/verify/validation/validation.js';
import { REGISTRY } from '../../src/verify/registry.js';
import { reference } from './referenceFiles.js';

const { steckler, steelRoom, corridor, box } = reference();

describe('a profile reduced to two layers', () => {
  test('of two layers is those', () => {
    const two = twoLayers([300, 300, 400, 400, 400], 2.5);
    expect(two.height).toBeCloseTo(1, 9);
    expect(two.lower).toBe(300);
    expect(two.upper).toBeCloseTo(400, 9);
  });

  test('of one temperature is all upper layer', () => {
    expect(twoLayers([350, 350], 2)).toEqual({ height: 0, lower: 350, upper: 350 });
  });
});

describe('an opening between layers', () => {
  const opening = { width: 0.74, height: 1.83, sill: 0, discharge: 0.7, outdoors: 300, join: 0.9 };

  test('of one temperature flows as the doorway of the network does', () => {
    const flow = layeredOpeningFlow({ ...opening, lower: 400, upper: 400 });
    const doorway = { inside: 400, outside: 300, discharge: 0.7, width: 0.74, height: 1.83 };
    const network = (direction: string) => REGISTRY.get('doorwayFlow')!.run({ ...doorway, direction });
    expect(flow.outflow).toBeCloseTo(network('out'), 4);
    expect(flow.inflow).toBeCloseTo(network('in'), 4);
  });

  test('has a higher neutral plane when only its upper part is hot', () => {
    const layered = layeredOpeningFlow({ ...opening, lower: 310, upper: 400 });
    const mixed = layeredOpeningFlow({ ...opening, lower: 400, upper: 400 });
    expect(layered.neutralHeight).toBeGreaterThan(mixed.neutralHeight);
    expect(layered.outflow).toBeCloseTo(layered.inflow, 6);
  });
});

describe('a measured table', () => {
  test('with faults says which, and nothing is run', () => {
    const broken = { ...steelRoom, text: steelRoom.text.replace('1059.6', 'hot') };
    expect(runValidation({ steckler, steelRoom: broken, corridor, box })).toEqual({
      faults: [expect.objectContaining({ line: 4, field: 'HRR_kW', message: "'hot' is no number" })],
    });
    const lacking = runValidation({ steckler: { ...steckler, text: 'id,test\nx,1\n' }, steelRoom, corridor, box });
    expect((lacking as { faults: { message: string }[] }).faults[0].message).toMatch(/lacks the columns fire_location/);
  });
});
