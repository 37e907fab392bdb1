import { format, parseQuantity, type Kind, type UnitSystem } from '../units/index.js';
import {
  controlsFor,
  type ChoiceControl,
  type Control,
  type QuantityControl,
  type GivenControl,
  type WordsControl,
} from './controls.js';
import { element, setText } from './dom.js';
import { unitIn, withOwnUnit } from './sliders.js';
import { sliderTrack } from './sliderTrack.js';
import type { Option } from './option.js';

/** A fault while someone types or drags is shown when they stop for so long [ms]. */
const TYPING_PAUSE = 900;

/** Below this width the groups start closed, so that the verdict is not pages away [px]. */
const NARROW = 1080;

/** @param rests the hand has left the field: what comes next is another change */
type Edit = (control: Control, value: string, rests: boolean) => void;

interface View {
  control: Control;
  /**
   * shows the field as the option has it; @param force also where someone is at it, since the design changed by other
   * means
   */
  update(option: Option, force: boolean): void;
}

/** The controls of the current option. They are built anew only when the design has other parts or shapes. */
export class ControlsView {
  private views: View[] = [];
  private signature = '';
  private readonly closed = new Map<string, boolean>();

  constructor(
    private readonly root: HTMLElement,
    private readonly edit: Edit,
    private readonly units: () => UnitSystem,
  ) {}

  update(option: Option, force = false): void {
    const groups = controlsFor(option.design, option.text);
    const signature = `${option.id} ${groups.flatMap((group) => group.controls.map(({ id }) => id)).join(' ')}`;
    if (signature !== this.signature) {
      this.signature = signature;
      const focused = document.activeElement?.id;
      this.views = [];
      this.root.replaceChildren(
        ...groups.map(({ title, closed = false, controls }) => {
          const box = element('div', { class: 'controls' });
          for (const control of controls) {
            const { view, root } = this.make(control);
            this.views.push(view);
            box.append(root);
          }
          const open = !(this.closed.get(title) ?? (closed || window.innerWidth < NARROW));
          const group = element('details', { class: 'group', open }, element('summary', {}, title), box);
          group.addEventListener('toggle', () => this.closed.set(title, !group.open));
          return group;
        }),
      );
      if (focused) document.getElementById(focused)?.focus();
    }
    const now = new Map(groups.flatMap((group) => group.controls.map((control) => [control.id, control] as const)));
    for (const view of this.views) {
      view.control = now.get(view.control.id) ?? view.control;
      view.update(option, force);
    }
  }

  /** Opens the group that a part of the pit is changed in, and brings it into sight. */
  open(block: string): void {
    const own = this.views.find(({ control }) => control.path[0] === block && control.type !== 'words');
    const field = own && document.getElementById(domId(own.control));
    const group = field?.closest('details');
    if (!field || !group) return;
    group.open = true;
    const summary = group.querySelector('summary')!;
    summary.focus({ preventScroll: true });
    summary.scrollIntoView({ block: 'start' });
  }

  private make(control: Control): { view: View; root: HTMLElement } {
    if (control.type === 'choice') return choiceView(control, this.edit);
    if (control.type === 'words' || control.type === 'given') return wordsView(control, this.edit);
    return quantityView(control, this.edit, this.units);
  }
}

function domId(control: Control): string {
  return `c-${control.id.replace(/[^A-Za-z0-9]+/g, '-')}`;
}

function choiceView(control: ChoiceControl, edit: Edit): { view: View; root: HTMLElement } {
  const id = domId(control);
  const select = element(
    'select',
    { id, 'data-field': control.id },
    ...control.choices.map(({ value, label }) => element('option', { value }, label)),
  );
  const view: View = {
    control,
    update: () => {
      const { value } = view.control as ChoiceControl;
      if (select.value !== value) select.value = value;
    },
  };
  select.addEventListener('change', () => edit(view.control, select.value, true));
  return { view, root: element('div', { class: 'control' }, element('label', { for: id }, control.label), select) };
}

function wordsView(control: WordsControl | GivenControl, edit: Edit): { view: View; root: HTMLElement } {
  const id = domId(control);
  const input = element('input', { id, type: 'text', maxlength: 200, autocomplete: 'off', 'data-field': control.id });
  const fault = faultLine(id, input);
  const view: View = {
    control,
    update: (option, force) => {
      const refusal = option.refused.get(control.id);
      const written = (control.type === 'given' ? refusal?.value : undefined) ?? option.text.get(control.path) ?? '';
      if ((force || document.activeElement !== input) && input.value !== written) input.value = written;
      fault.show(refusal?.message ?? '');
    },
  };
  // half of a number is no mistake yet
  if (control.type === 'words') input.addEventListener('input', () => edit(view.control, input.value, false));
  input.addEventListener('change', () => edit(view.control, input.value, true));
  const root = element(
    'div',
    { class: control.type === 'words' ? 'control words' : 'control' },
    element('label', { for: id }, control.label),
    input,
    fault.line,
  );
  return { view, root };
}

function quantityView(
  control: QuantityControl,
  edit: Edit,
  units: () => UnitSystem,
): { view: View; root: HTMLElement } {
  const id = domId(control);
  const text = element('input', {
    id,
    type: 'text',
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
    'data-field': control.id,
  });
  const range = element('input', {
    id: `${id}-slider`,
    type: 'range',
    min: 0,
    max: control.slider.last,
    step: 1,
    'aria-label': `${control.label}, slider`,
    'data-slider': control.id,
  });
  const fault = faultLine(id, text);
  let typing = 0;
  let written = '';
  const view: View = {
    control,
    update: (option, force) => {
      const own = view.control as QuantityControl;
      const refusal = option.refused.get(own.id);
      written = inSystem(option.text.get(own.path) ?? format(own.kind, own.value), own.kind, units());
      const shown = refusal?.value ?? written;
      if ((force || document.activeElement !== text) && text.value !== shown) text.value = shown;
      if (force || document.activeElement !== range) range.value = String(own.slider.place(siOf(own, shown)));
      range.setAttribute('aria-valuetext', shown);
      if (!typing || !refusal) fault.show(refusal?.message ?? '');
    },
  };
  /** A number without a unit gets the field's own once the hand pauses; the field shows it when the hand leaves. */
  const settle = (rests: boolean) => {
    window.clearTimeout(typing);
    typing = 0;
    const whole = withOwnUnit(control.kind, control.slider, text.value, written);
    if (rests) text.value = whole;
    edit(view.control, whole, rests);
  };
  /**
   * What can't be taken is told when the hand pauses: half a fraction is no mistake yet, nor is a drag that goes on.
   */
  const follow = () => {
    window.clearTimeout(typing);
    typing = window.setTimeout(() => settle(false), TYPING_PAUSE);
    edit(view.control, text.value, false);
  };
  text.addEventListener('input', follow);
  text.addEventListener('change', () => settle(true));
  range.addEventListener('input', () => {
    text.value = control.slider.write(Number(range.value));
    follow();
  });
  range.addEventListener('change', () => settle(true));
  const root = element(
    'div',
    { class: 'control' },
    element('label', { for: id }, control.label),
    text,
    sliderTrack(range),
    fault.line,
  );
  return { view, root };
}

/** Figures that a size in SI is shown with: as many as a sixteenth of an inch has in millimetres. */
const FIGURES = 5;

/** What the file says, in SI where that is wanted and it says it otherwise; what is no plain quantity stays. */
function inSystem(written: string, kind: Kind, system: UnitSystem): string {
  if (system === 'shop' || kind === 'number') return written;
  const read = parseQuantity(kind, written);
  if (!read.ok || read.wood) return written;
  const text = format(kind, read.si, 'si', { digits: FIGURES });
  return unitIn(written) === unitIn(text) ? written : text;
}

function siOf({ kind, value }: QuantityControl, written: string): number {
  const read = parseQuantity(kind, written);
  return read.ok && !read.wood ? read.si : value;
}

/** The line under a field that says what is wrong with it. */
function faultLine(id: string, input: HTMLInputElement): { line: HTMLElement; show(message: string): void } {
  const line = element('p', { class: 'fault', id: `${id}-fault`, hidden: true });
  return {
    line,
    show: (message) => {
      setText(line, message);
      line.hidden = message === '';
      if (message === '') {
        input.removeAttribute('aria-invalid');
        input.removeAttribute('aria-describedby');
      } else {
        input.setAttribute('aria-invalid', 'true');
        input.setAttribute('aria-describedby', line.id);
      }
    },
  };
}
