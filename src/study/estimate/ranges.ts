import { freeRelation, risesInside, risesOutside, windCrosses } from '../../network/convection.js';
import { OUTDOORS } from '../../network/types.js';
import { flameHeight } from '../../physics/ceilingJet.js';
import { airKinematicViscosity, airPrandtl } from '../../physics/air.js';
import { rayleigh } from '../../physics/freeConvection.js';
import { outsideValidity, type RelationName, type Validity } from '../../physics/validity.js';
import type { Pit } from '../../network/pit.js';
import type { Warning } from './result.js';

/** Where gas and plate are nearer than this, their convection carries next to nothing, whatever its relation [K]. */
const MATTERS = 5;

interface Leaving {
  entry: Validity;
  value: number;
  where: string;
  /** how far outside, as a ratio */
  off: number;
}

/**
 * Relations that a solved state leans on outside their published range, each once, at the face where it is farthest
 * out. Needs an evaluation of the balances at x first.
 *
 * Left out is the gas emissivity below 400 K: every pit has such gas somewhere, so that a warning would tell nothing
 * apart. What holding it at 400 K does is said where the trust in a result is described.
 */
export function rangeWarnings({ model }: Pit, x: Float64Array): Warning[] {
  const { network } = model;
  const { outdoors } = network;
  const worst = new Map<RelationName, Leaving>();
  const see = (name: RelationName, value: number, where: string) => {
    const entry = outsideValidity(name, value);
    if (!entry) return;
    const off = value < entry.low ? entry.low / Math.max(value, 1e-9) : value / entry.high;
    if (off > (worst.get(name)?.off ?? 1)) worst.set(name, { entry, value, where, off });
  };
  network.faces.forEach((face, i) => {
    const outside = face.zone === OUTDOORS;
    const surface = x[face.node];
    const gas = outside ? outdoors.temperature : x[model.gas + face.zone];
    const where = `${network.nodes[face.node].name}, ${outside ? 'outside' : 'inside'}`;
    if (Math.abs(surface - gas) < MATTERS) return;
    const film = 0.5 * (surface + gas);
    const viscosity = airKinematicViscosity(film, outdoors.pressure);
    see('airProperties', film, where);
    const shape = model.faceShape[i];
    see(
      freeRelation(shape, (outside ? risesOutside : risesInside)(shape, surface, gas)),
      rayleigh(surface - gas, film, model.faceLength[i], viscosity, airPrandtl(film)),
      where,
    );
    if (!outside) {
      const zone = network.zones[face.zone];
      see('nusseltPipe', (model.speed[face.zone] * zone.hydraulicDiameter) / viscosity, where);
    } else if (outdoors.wind > 0) {
      see(
        windCrosses(shape) ? 'nusseltCrossCylinder' : 'nusseltFlatPlate',
        (outdoors.wind * model.faceWindLength[i]) / viscosity,
        where,
      );
    }
  });
  const { roof } = network.fire;
  if (roof && roof.faces.length > 0) {
    const [struck] = roof.faces;
    const where = `${network.nodes[network.faces[struck].node].name}, inside`;
    see('ceilingJet', flameHeight(x[model.fire], roof.across) / roof.height, where);
  }
  return [...worst].map(([name, { entry, value, where }]) => ({
    code: 'relation-outside-range',
    message:
      `the ${entry.quantity} is ${value.toPrecision(3)} there, and the relation used (${name}) was published for ` +
      `${range(entry)}: take what hangs on it as a rough figure`,
    where,
    value,
    limits: {
      ...(Number.isFinite(entry.high) ? { low: entry.low, high: entry.high } : { low: entry.low }),
      unit: entry.unit,
      source: entry.source,
    },
  }));
}

function range({ low, high, unit }: Validity): string {
  const own = unit === '-' ? '' : ` ${unit}`;
  const plain = (value: number) => (value >= 1e5 ? value.toExponential(0).replace('+', '') : String(value));
  return Number.isFinite(high) ? `${plain(low)} to ${plain(high)}${own}` : `${plain(low)}${own} and more`;
}
