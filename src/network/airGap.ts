/** Heat across the air gap behind a heat shield, and what air that rises through it carries off. */
import { annulusConductivity, openGapNusselt, shutLevelNusselt, shutUprightNusselt } from '../physics/airGap.js';
import { airConductivity, airKinematicViscosity, airPrandtl } from '../physics/air.js';
import { rayleigh } from '../physics/freeConvection.js';
import { blackPower } from '../physics/radiation.js';
import type { AirGap, Outdoors } from './types.js';

/** [W] */
export interface GapHeat {
  /** from the wall to the shield */
  across: number;
  /** from each of them to the air that rises through an open gap, and goes outdoors */
  fromWall: number;
  fromShield: number;
}

/**
 * Radiation from wall to shield; shut in, convection by the relation of how the gap stands; open, what each of the two
 * gives to the rising air, and conduction across it as far as their boundary layers meet. Level gaps count as shut:
 * nothing lets air rise in them. A round shell's open gap counts as an upright one as high as what of the shell it
 * covers.
 */
export function gapHeat(gap: AirGap, wall: number, shield: number, outdoors: Outdoors, out: GapHeat): void {
  const { area, width, emissivity } = gap;
  const radiant = emissivity * (blackPower(wall) - blackPower(shield));
  const mean = 0.5 * (wall + shield);
  const pressure = outdoors.pressure;
  const level = gap.shape === 'up' || gap.shape === 'down';
  out.fromWall = 0;
  out.fromShield = 0;
  if (gap.open && !level) {
    const [byWall, meetsAtWall] = openSide(gap, wall, outdoors);
    const [byShield, meetsAtShield] = openSide(gap, shield, outdoors);
    out.fromWall = area * byWall * (wall - outdoors.temperature);
    out.fromShield = area * byShield * (shield - outdoors.temperature);
    const meet = 0.5 * (meetsAtWall + meetsAtShield);
    out.across = area * (radiant + ((meet * airConductivity(mean)) / width) * (wall - shield));
    return;
  }
  const k = airConductivity(mean);
  const Pr = airPrandtl(mean);
  const nu = airKinematicViscosity(mean, pressure);
  const deltaT = wall - shield;
  if (gap.shape === 'horizontalCylinder') {
    const [innerRadius, outerRadius] = [gap.radius, gap.radius + width];
    const gas = { temperature: mean, kinematicViscosity: nu, diffusivity: nu / Pr, conductivity: k };
    const effective = annulusConductivity({ innerRadius, outerRadius }, gas, deltaT);
    const conductance = effective / (innerRadius * Math.log(outerRadius / innerRadius));
    out.across = area * (radiant + conductance * deltaT);
    return;
  }
  const Ra = rayleigh(deltaT, mean, width, nu, Pr);
  const rises = (gap.shape === 'up') === deltaT > 0;
  const Nu = level ? (rises && Ra > 0 ? shutLevelNusselt(Ra) : 1) : shutUprightNusselt(Ra, gap.height / width, Pr);
  out.across = area * (radiant + ((Nu * k) / width) * deltaT);
}

/**
 * Coefficient between one side of an open gap and the air from outdoors [W/(m2 K)], and how far the two boundary layers
 * meet, 0..1.
 */
function openSide({ width, height }: AirGap, surface: number, { temperature, pressure }: Outdoors): [number, number] {
  const film = 0.5 * (surface + temperature);
  const Pr = airPrandtl(film);
  const Ra = rayleigh(surface - temperature, film, width, airKinematicViscosity(film, pressure), Pr);
  const El = (Ra * width) / height;
  const Nu = openGapNusselt(El);
  return [(Nu * airConductivity(film)) / width, El > 0 ? Math.min(1, (24 * Nu) / El) : 1];
}
