/** Can a cook's day be followed: food where a station is, events one after the other while the fire is tended. */
import { format } from '../units/index.js';
import type { Design, StationName } from './design.js';
import type { Reading } from './reading.js';

export function checkCook({ cook, fire }: Design, stations: readonly StationName[], reading: Reading): void {
  checkMinding(fire, reading);
  if (!cook) return;
  cook.load.forEach((food, i) => {
    if (food.station && !stations.includes(food.station)) {
      reading.fault(['cook', 'load', i, 'station'], {
        code: 'unknown-name',
        message: 'is no station of this pit',
        allowed: stations.join(', '),
      });
    }
    if (food.start >= fire.target) {
      reading.fault(['cook', 'load', i, 'start'], {
        message: `is not below the target of ${format('temperature', fire.target)}`,
        allowed: 'food colder than the pit',
      });
    }
  });
  let [busyTo, before] = [cook.loading, 'the loading'];
  cook.events.forEach((event, i) => {
    const path = ['cook', 'events', i] as const;
    if (!event.door && !event.fireboxDoor && event.wind === undefined && event.rain === undefined) {
      reading.fault(path, {
        code: 'missing',
        message: 'says nothing that happens',
        allowed: 'door, fireboxDoor, wind or rain',
      });
    } else if (event.at < busyTo) {
      reading.fault([...path, 'at'], {
        message: `begins before ${before} is over`,
        allowed: `${format('time', busyTo)} or later; events stand in the order of time`,
      });
    } else if (event.at + event.lasts > cook.tend) {
      reading.fault([...path, 'at'], {
        message: 'is not over before the tending ends',
        allowed: `an end within ${format('time', cook.tend)} of loading`,
      });
    }
    if (Number.isFinite(event.at + event.lasts)) [busyTo, before] = [event.at + event.lasts, `event ${i + 1}`];
  });
}

function checkMinding({ cook: { intakes } }: Design['fire'], reading: Reading): void {
  if (intakes.some(Number.isNaN) || intakes.length === 0) return;
  if (intakes.length === 2 && intakes[0] <= intakes[1] && intakes[1] > 0) return;
  reading.fault(['fire', 'cook', 'intakes'], {
    message: 'are no limits',
    allowed: 'the least and the most that the intakes are open, as in [20 %, 100 %]',
  });
}
