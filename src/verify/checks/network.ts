/** Openings by the network of a pit: what flows through them, and what they radiate. */
import { STANDARD_PRESSURE } from '../../physics/constants.js';
import { choice, defineCheck, list, optional, quantity, type Check } from '../check.js';
import { heatThrough } from '../openRoom.js';
import { stillRoomFlows } from '../stillRoom.js';

const inside = quantity('temperature', 'air of the room');
const outside = quantity('temperature', 'air outdoors');
const discharge = quantity('number', 'discharge coefficient');
const pressure = optional('pressure', 'outdoors; one standard atmosphere when left out');

export const networkChecks: Record<string, Check> = {
  stackEffectFlow: defineCheck(
    'flow through a room with a low and a high opening, by the flow network of the pit',
    {
      inside,
      outside,
      pressure,
      discharge,
      area: quantity('area', 'of each opening'),
      rise: quantity('length', 'from the low to the high one'),
    },
    'massFlow',
    (v) => {
      const opening = { area: v.area, discharge: v.discharge, extent: 0 };
      const flows = stillRoomFlows({
        inside: v.inside,
        outside: v.outside,
        pressure: v.pressure ?? STANDARD_PRESSURE,
        openings: [
          { ...opening, name: 'low', centre: 0 },
          { ...opening, name: 'high', centre: v.rise },
        ],
      });
      const high = flows.get('high')!;
      return Math.abs(high.out - high.in);
    },
  ),
  doorwayFlow: defineCheck(
    'flow one way through a doorway that carries both, by the flow network of the pit',
    {
      inside,
      outside,
      pressure,
      discharge,
      width: quantity('length', 'of the doorway'),
      height: quantity('length', 'of the doorway'),
      direction: choice(['out', 'in'], 'out of the room, or into it'),
    },
    'massFlow',
    (v) => {
      const door = { area: v.width * v.height, discharge: v.discharge, centre: v.height / 2, extent: v.height };
      const flows = stillRoomFlows({
        inside: v.inside,
        outside: v.outside,
        pressure: v.pressure ?? STANDARD_PRESSURE,
        openings: [{ ...door, name: 'door' }],
      });
      return flows.get('door')![v.direction];
    },
  ),
  openingRadiation: defineCheck(
    'heat that the walls of a room radiate through an opening, outdoors or into a second room, by the network of the pit',
    {
      areas: list('area', 'of the walls of each room'),
      emissivities: list('number', 'of the walls of each room'),
      temperatures: list('temperature', 'of the walls of each room'),
      opening: quantity('area', 'of the opening'),
      outside,
    },
    'power',
    ({ areas, emissivities, temperatures, opening, outside: outdoors }) => {
      if (areas.length > 2) throw new RangeError('openingRadiation: one room or two');
      const rooms = areas.map((area, i) => ({ area, emissivity: emissivities[i], temperature: temperatures[i] }));
      return heatThrough(rooms, opening, outdoors);
    },
  ),
};
