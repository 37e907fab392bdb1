/**
 * Outside finishes: total emissivity, and the temperature a coating stands.
 *
 * Emissivities: tables of infrared instruments (FLIR manuals T559880 and T810253, Omega OS100, Raytek), as read there.
 * Paint limits: common practice, no source.
 */
interface FinishRow {
  /** total hemispherical emissivity, 0..1 */
  emissivity: number;
  /** printed range or how the value was picked from the tables */
  note: string;
  /** highest service temperature of a coating [K]; absent for bare metal */
  maxTemperature?: number;
}

const HEAT_PAINT_LIMIT = 923.15; // 650 °C (1200 °F), the usual label of heat-resistant black paint
const LACQUER_LIMIT = 423.15; // 150 °C, ordinary paint and lacquer

/** What outsides may be finished with, and how they radiate [-]. */
export const FINISHES: Readonly<Record<string, FinishRow>> = {
  'black paint': { emissivity: 0.92, note: 'black paint, heat resistant', maxTemperature: HEAT_PAINT_LIMIT },
  'matt lacquer': { emissivity: 0.97, note: 'black matt lacquer, 100 °C', maxTemperature: LACQUER_LIMIT },
  'gloss paint': { emissivity: 0.9, note: 'black paint, gloss', maxTemperature: LACQUER_LIMIT },
  'oil paint': { emissivity: 0.94, note: 'oil paints 0.92..0.96', maxTemperature: LACQUER_LIMIT },
  oxidised: { emissivity: 0.79, note: 'steel, oxidised, 200 °C' },
  bare: { emissivity: 0.77, note: 'steel, hot rolled, 20 °C; 0.60 at 130 °C, so give emissivity where it matters' },
  rusted: { emissivity: 0.69, note: 'steel, rusted red' },
  'rolled sheet': { emissivity: 0.66, note: 'steel, rolled sheet' },
  polished: { emissivity: 0.07, note: 'steel, polished' },
  stainless: { emissivity: 0.6, note: 'stainless after repeated heating 0.5..0.7 at 230 to 900 °C, middle taken' },
  galvanised: { emissivity: 0.28, note: 'galvanised steel, oxidised' },
  aluminium: { emissivity: 0.09, note: 'aluminium, commercial sheet' },
};

/** What an outside has unless the file says otherwise. */
export const DEFAULT_FINISH = 'black paint';
