import type { BuiltPit } from '../../network/cells.js';

/** Other weather for a while; what is left out stays as the site has it. */
interface Weather {
  /** wind speed [m/s] */
  wind?: number;
  /** wet share of the upward-facing outside */
  rain?: number;
}

/** Turn the weather of a network. */
export function turnWeather({ wind, rain }: Weather): (built: BuiltPit) => void {
  return ({ network }) => {
    if (wind !== undefined) network.outdoors.wind = wind;
    if (rain !== undefined) network.outdoors.rain = rain;
  };
}
