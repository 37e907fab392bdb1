import { readFileSync } from 'node:fs';
import { controlsFor, type Control } from '../../../src/page/controls.js';
import type { Workbench } from '../../../src/page/workbench.js';
import { example } from '../../cli/support/run.js';

export const textOf = (name: string) => readFileSync(example(`${name}.yaml`), 'utf8');

export const labels = ({ options }: Workbench) => options.map(({ label }) => label);

/** Changes a field of the current option, as its control does; whether that changed the design. */
export function edit(bench: Workbench, id: string, value: string): boolean {
  const { design, text } = bench.current;
  const control = controlsFor(design, text)
    .flatMap(({ controls }): Control[] => controls)
    .find((each) => each.id === id);
  if (!control) throw new Error(`no control ${id}`);
  return bench.edit(control, value);
}
