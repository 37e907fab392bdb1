/** A design takes over what measured cooks have told. */
import { format } from '../units/index.js';
import type { Design } from './design.js';
import { unknownInputsOf, type UnknownInput } from './unknownInputs.js';
import { rangeOf } from './fields.js';
import type { DesignWarning } from './faults.js';
import type { Fitted, FittedValue, FittedValueUse } from './fitted.js';

interface Applied {
  design: Design;
  warnings: DesignWarning[];
  /** paths of the numbers that were replaced */
  replaced: string[];
}

/** A fitted file says what a design had to four digits. */
const ROUNDING = 1e-3;

/**
 * The design with its estimates as they were fitted.
 *
 * A value that 'is' replaces what the design has, where that is what the fit's own design had; a design with a number
 * of its own, or another finish, keeps it, with a warning. A factor multiplies what the design has. What the design has
 * no field for is passed over.
 *
 * @param byWood the design gives its fire as weight of wood, whose heat the fire then follows
 */
export function withFitted(drawn: Design, fitted: Fitted, byWood: boolean): Applied {
  const design = structuredClone(drawn);
  const warnings: DesignWarning[] = [];
  const replaced: string[] = [];
  const fields = unknownInputsOf(design);
  const uses = new Map<FittedValue, number | null>();
  // in the order of the table, whatever the file's: the heat of the wood comes after its moisture, which moves it
  for (const field of fields) {
    const value = fitted.values.find(({ path }) => path === field.path);
    if (!value) continue;
    const own = field.targets[0].get(design);
    const differs = value.scale === 'is' && field.targets.some(({ get }) => !same(get(design), value.was));
    uses.set(value, differs ? null : own);
    if (differs) {
      warnings.push(notUsed(field, value, design));
      continue;
    }
    const wanted = value.scale === 'is' ? value.value : value.value * own;
    const { min, max } = field.range;
    const taken = Math.min(max, Math.max(min, wanted));
    if (taken !== wanted) warnings.push(beyond(field, wanted, taken));
    for (const { path, set } of field.targets) {
      set(design, taken);
      replaced.push(path);
    }
    if (field.path === 'wood.heat' && byWood) {
      const fire = design.fire.heat * (taken / own);
      const heat = rangeOf('fire.heat');
      design.fire.heat = Math.min(heat.max, Math.max(heat.min, fire));
    }
  }
  for (const value of fitted.values) {
    // a part that shares its finish with another here goes with that one, and had its own where the log was measured
    const host = fields.find(({ targets }) => targets.some(({ path }) => path === value.path));
    if (!uses.has(value) && host && !same(host.targets[0].get(drawn), value.was)) {
      warnings.push(notUsed({ ...host, path: value.path }, value, drawn));
    }
  }
  const values = fitted.values.map((value): FittedValueUse => ({ ...value, own: uses.get(value) ?? null }));
  return { design: { ...design, fitted: { ...fitted, values } }, warnings, replaced };
}

function same(own: number, was: number): boolean {
  return Math.abs(own - was) <= ROUNDING * Math.abs(was) + 1e-12;
}

function notUsed({ path, range, targets }: UnknownInput, { was }: FittedValue, design: Design): DesignWarning {
  const { kind } = range;
  const other = targets.find(({ get }) => !same(get(design), was))!;
  const own = other.get(design);
  const place = other.path === path ? '' : ` at ${other.path}`;
  return {
    code: 'fitted-not-used',
    message:
      `this design has ${format(kind, own)}${place}, the design that the log was measured on had ${format(kind, was)}: ` +
      `what was fitted there is not used. Give it the same to use it, or leave it out where that is the default`,
    where: path,
    value: own,
    limits: null,
  };
}

function beyond({ path, range }: UnknownInput, wanted: number, taken: number): DesignWarning {
  const { kind, low, high, min, max } = range;
  return {
    code: 'fitted-out-of-range',
    message: `fitted, it comes to ${format(kind, wanted)}, beyond what a design may have (${low} to ${high}): ${format(kind, taken)} is used`,
    where: path,
    value: wanted,
    limits: { low: min, high: max, unit: kind },
  };
}
