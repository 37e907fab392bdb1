/** Said once in every report, in these words, wherever it's printed. */
export const NOT_A_GUARANTEE = 'an estimate, not a guarantee: fire, weather, craft and cook move these numbers';

/** What stands at the end of every text and sheet. */
export const CAUTIONS =
  'Cautions: fire and hot steel burn. Burning wood gives off carbon monoxide: outdoors only, never in a garage, tent or ' +
  'under a closed roof. Judge food by a food thermometer in the meat, not by these temperatures. Trailers, local codes ' +
  'and licensed practice: ask those who answer for them.';

/** What plate does and doesn't do to the heat that is lost. */
export const PLATE_AND_LOSS =
  'Plate thickness hardly changes this loss: steel lets heat through so easily that its thickness does not count. ' +
  'Thicker plate gives smaller swings and a stiffer, longer-lived shell, for more warm-up time, wood and weight. ' +
  'Insulation is what cuts the loss.';

/** What 'soaked' means, wherever it stands beside a number. */
export const SOAKED_MEANS =
  'Soaked: the thermometer has read its target, and the steel of chamber and upright holds 90 % of the heat above outdoors that ' +
  'it holds once settled there, and never less after.';
