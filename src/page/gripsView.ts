import { format, type UnitSystem } from '../units/index.js';
import type { Control, QuantityControl } from './controls.js';
import { element } from './dom.js';
import { gripsOf, partBoxes, type Grip } from './grips.js';
import type { Design } from '../design/design.js';
import type { ViewPlace } from '../draw/sheet.js';

/** What handles on the drawing may do to the rest of the page. */
export interface GripActions {
  edit(control: Control, value: string, rests: boolean): void;
  /** shows the controls of a part */
  open(block: string): void;
  /** the control of a field as the design has it now; undefined: it has none */
  control(field: string): QuantityControl | undefined;
}

interface Shown {
  root: HTMLElement;
  value: HTMLElement;
  grip: Grip;
}

/** Least size of what a finger taps [px]. */
const TARGET = 44;

/**
 * Handles over the drawing, which drag as sliders do, and parts that open their controls at a tap. A finger has to tap
 * a handle before it moves it, so that a swipe over the drawing scrolls.
 */
export class GripsView {
  readonly root = element('div', { id: 'grips' });
  private readonly grips = new Map<string, Shown>();
  private parts: HTMLElement[] = [];
  /** a handle is being dragged */
  holding = false;

  constructor(private readonly actions: GripActions) {}

  /** Lays them over a drawing that has just been made. */
  over(design: Design, side: ViewPlace, system: UnitSystem): void {
    const boxes = partBoxes(design, side);
    if (this.parts.map(({ title }) => title).join() !== boxes.map(({ label }) => titleOf(label)).join()) {
      for (const part of this.parts) part.remove();
      this.parts = boxes.map(({ block, label }) => {
        const button = element('button', { type: 'button', title: titleOf(label), 'data-part': block });
        button.setAttribute('aria-label', titleOf(label));
        button.addEventListener('click', () => this.actions.open(block));
        return button;
      });
      this.root.prepend(...this.parts);
    }
    boxes.forEach(({ left, top, width, height }, i) => {
      const [wide, high] = [Math.max(TARGET, width), Math.max(TARGET, height)];
      place(this.parts[i], left - (wide - width) / 2, top - (high - height) / 2);
      Object.assign(this.parts[i].style, { width: `${wide}px`, height: `${high}px` });
    });
    const grips = gripsOf(design, side).filter(({ field }) => this.actions.control(field));
    for (const [field, { root }] of this.grips) {
      if (grips.some((grip) => grip.field === field)) continue;
      root.remove();
      this.grips.delete(field);
    }
    for (const grip of grips) {
      const shown = this.grips.get(grip.field) ?? this.make(grip);
      shown.grip = grip;
      place(shown.root, grip.x, grip.y);
      const { slider, kind, value } = this.actions.control(grip.field)!;
      const text = format(kind, value, system);
      shown.value.textContent = text;
      const attributes = { valuemin: 0, valuemax: slider.last, valuenow: slider.place(value), valuetext: text };
      for (const [name, now] of Object.entries(attributes)) shown.root.setAttribute(`aria-${name}`, String(now));
    }
  }

  private make(grip: Grip): Shown {
    const value = element('span', { 'aria-hidden': 'true' });
    const way = grip.perDown === 0 ? 'across' : 'upright';
    const root = element('div', { class: `grip ${way}`, role: 'slider', tabindex: 0, 'data-grip': grip.field }, value);
    root.setAttribute('aria-label', `${grip.label}, on the drawing`);
    root.setAttribute('aria-orientation', way === 'across' ? 'horizontal' : 'vertical');
    const shown: Shown = { root, value, grip };
    this.grips.set(grip.field, shown);
    this.root.append(root);
    const moveTo = (place: number, rests: boolean) => {
      const control = this.actions.control(shown.grip.field);
      if (!control) return;
      const { slider } = control;
      this.actions.edit(control, slider.write(Math.min(slider.last, Math.max(0, place))), rests);
    };
    let hold: { pointer: number; x: number; y: number; from: number; grip: Grip; place: number } | null = null;
    root.addEventListener('pointerdown', (event) => {
      if (!event.isPrimary || event.button !== 0) return;
      // the first tap of a finger only takes it
      if (event.pointerType !== 'mouse' && document.activeElement !== root) return;
      const control = this.actions.control(shown.grip.field);
      if (!control) return;
      event.preventDefault();
      root.focus({ preventScroll: true });
      root.setPointerCapture(event.pointerId);
      const { value: from, slider } = control;
      this.holding = true;
      hold = {
        pointer: event.pointerId,
        x: event.clientX,
        y: event.clientY,
        from,
        grip: shown.grip,
        place: slider.place(from),
      };
    });
    root.addEventListener('pointermove', ({ pointerId, clientX, clientY }) => {
      if (hold?.pointer !== pointerId) return;
      const { perRight, perDown } = hold.grip;
      const si = hold.from + perRight * (clientX - hold.x) + perDown * (clientY - hold.y);
      const place = this.actions.control(grip.field)?.slider.place(si);
      if (place === undefined || place === hold.place) return;
      hold.place = place;
      moveTo(place, false);
    });
    const end = ({ pointerId }: PointerEvent) => {
      if (hold?.pointer !== pointerId) return;
      const now = this.actions.control(grip.field);
      if (now && hold.from !== now.value) moveTo(hold.place, true);
      hold = null;
      this.holding = false;
    };
    root.addEventListener('pointerup', end);
    root.addEventListener('pointercancel', end);
    root.addEventListener('keydown', (event) => {
      const step = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1, PageUp: 5, PageDown: -5 }[event.key];
      const control = this.actions.control(shown.grip.field);
      if (!step || !control) return;
      event.preventDefault();
      moveTo(control.slider.place(control.value) + step, true);
    });
    return shown;
  }
}

function titleOf(label: string): string {
  return `${label}: change it`;
}

function place(root: HTMLElement, x: number, y: number): void {
  root.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px)`;
}
