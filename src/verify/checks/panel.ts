/** Checks of flat panels: buckling by heat, edges, bending. */
import { freePanelStrain, heldPanelStrain, type PanelSize } from '../../physics/panelBuckling.js';
import { leafOverRim, middleOverEdge } from '../../physics/panelEdge.js';
import { radiationFall, spotOverEdge } from '../../physics/panelFire.js';
import { pushedPanel, twistedLeaf } from '../../physics/plateBending.js';
import { choice, defineCheck, optional, quantity, type Check } from '../check.js';

const sizes = {
  a: optional('length', 'side of a rectangle'),
  b: optional('length', 'its other side'),
  diameter: optional('length', 'of a disc'),
};
const thickness = quantity('length', 'plate');
const edges = choice(['supported', 'clamped'], 'edges');
const force = quantity('number', 'force, N');
const modulus = quantity('number', 'modulus of elasticity, Pa');

function sizeOf({ a, b, diameter }: { a?: number; b?: number; diameter?: number }): PanelSize {
  if (diameter !== undefined) return { diameter };
  if (a === undefined || b === undefined) throw new RangeError('a panel has two sides or a diameter');
  return { a, b };
}

export const panelChecks: Record<string, Check> = {
  heldPanelStrain: defineCheck(
    'thermal strain that buckles a panel whose edges cannot move, in parts a million',
    { ...sizes, thickness, edges },
    'number',
    (v) => 1e6 * heldPanelStrain(sizeOf(v), v.thickness, v.edges),
  ),
  heldPanelFactor: defineCheck(
    'compression all round that buckles a panel, times side squared over rigidity (disc: radius squared)',
    { ...sizes, edges },
    'number',
    (v) => {
      const size = sizeOf(v);
      const across = 'diameter' in size ? size.diameter / 2 : Math.min(size.a, size.b);
      const thin = 1e-3 * across;
      return 12 * 1.3 * heldPanelStrain(size, thin, v.edges) * (across / thin) ** 2;
    },
  ),
  freePanelStrain: defineCheck(
    'thermal strain of middle over edge that buckles a panel free to grow, in parts a million',
    { ...sizes, thickness, edges },
    'number',
    (v) => 1e6 * freePanelStrain(sizeOf(v), v.thickness, v.edges),
  ),
  middleOverEdge: defineCheck(
    'middle of a panel over an edge that runs along a plate of another temperature',
    {
      panel: quantity('temperature', 'of the panel by itself'),
      neighbour: quantity('temperature', 'of the other plate by itself'),
      thickness,
      across: quantity('length', 'shorter side of the panel'),
      coefficient: quantity('coefficient', 'of both faces together'),
      conductivity: quantity('conductivity', 'of the steel'),
    },
    'temperatureDifference',
    (v) =>
      middleOverEdge(
        {
          panel: { temperature: v.panel, thickness: v.thickness },
          neighbour: { temperature: v.neighbour, thickness: v.thickness },
        },
        v.across,
        v.coefficient,
        v.conductivity,
      ),
  ),
  leafOverRim: defineCheck(
    "a door's leaf over the edge of the rim that laps over",
    {
      leaf: quantity('temperature', 'of the leaf'),
      outdoors: quantity('temperature', 'outdoors'),
      thickness,
      lap: quantity('length', 'lap'),
      inside: quantity('coefficient', 'of the inside face'),
      outside: quantity('coefficient', 'of the outside face'),
      conductivity: quantity('conductivity', 'of the steel'),
    },
    'temperatureDifference',
    (v) => leafOverRim(v),
  ),
  radiationFall: defineCheck(
    'radiation of a fire on the middle of a wall less on its edge',
    {
      power: quantity('power', 'that the fire radiates'),
      distance: quantity('length', 'from fire to wall'),
      across: quantity('length', 'shorter side of the wall'),
    },
    'heatFlux',
    (v) => radiationFall(v.power, v.distance, v.across),
  ),
  spotOverEdge: defineCheck(
    'middle of a plate over its edge where its middle takes up more heat',
    {
      more: quantity('heatFlux', 'by how much more'),
      thickness,
      across: quantity('length', 'shorter side'),
      coefficient: quantity('coefficient', 'of both faces together'),
      conductivity: quantity('conductivity', 'of the steel'),
    },
    'temperatureDifference',
    (v) => spotOverEdge(v),
  ),
  pushedPanel: defineCheck(
    'how far the middle of a supported panel gives under a force there',
    { ...sizes, thickness, force, modulus },
    'length',
    (v) => pushedPanel(sizeOf(v), v.thickness, v.force, v.modulus),
  ),
  pushedPanelFactor: defineCheck(
    'the same over W b2/(E t3), b the shorter side',
    { ratio: quantity('number', 'longer over shorter side') },
    'number',
    (v) => pushedPanel({ a: v.ratio, b: 1 }, 0.01, 1, 1) * 1e-6,
  ),
  twistedLeaf: defineCheck(
    'how far a pulled corner of a leaf comes out of its plane',
    { a: quantity('length', 'side'), b: quantity('length', 'other side'), thickness, force, modulus },
    'length',
    (v) => twistedLeaf(v, v.thickness, v.force, v.modulus),
  ),
};
