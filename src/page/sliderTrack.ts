import { element } from './dom.js';

/** How far from the middle of its handle a slider is still taken by it: half of what a thumb hits [px]. */
const REACH = 22;
/** How far a finger goes before it moves anything: less is a tap [px]. */
const SLOP = 8;
/** Width of the handle that the style sheet draws [px]. */
const HANDLE = 16;

/** A hold of the handle, from pointer down to pointer up. */
interface Hold {
  pointer: number;
  /** where it began, and how far beside the middle of the handle [px] */
  x: number;
  y: number;
  beside: number;
  /** what the slider showed then */
  before: string;
  moving: boolean;
}

/**
 * A slider in a track that decides what moves it. A browser's own moves wherever a finger lands on it, so that
 * scrolling past a slider changes it. Here a finger moves it by its handle alone, sideways; a swipe up or down is the
 * page's, and a tap beside the handle is one step that way. A mouse does what it does everywhere. Keys go to the slider
 * itself.
 *
 * @param range hands on `input` while it moves and `change` when it rests
 */
export function sliderTrack(range: HTMLInputElement): HTMLElement {
  const track = element('span', { class: 'track' }, range);
  let hold: Hold | null = null;

  const last = () => Number(range.max);
  const length = () => range.clientWidth - HANDLE;
  const handleAt = () =>
    range.getBoundingClientRect().left + HANDLE / 2 + (length() * Number(range.value)) / Math.max(1, last());
  const tell = (name: string) => range.dispatchEvent(new Event(name, { bubbles: true }));
  const moveTo = (place: number) => {
    const text = String(Math.min(last(), Math.max(0, Math.round(place))));
    if (text === range.value) return;
    range.value = text;
    tell('input');
  };
  const follow = (x: number) =>
    moveTo((last() * (x - range.getBoundingClientRect().left - HANDLE / 2)) / Math.max(1, length()));

  track.addEventListener('pointerdown', (event) => {
    if (!event.isPrimary || event.button !== 0) return;
    const beside = event.clientX - handleAt();
    const onHandle = Math.abs(beside) <= REACH;
    const mouse = event.pointerType === 'mouse';
    if (!mouse && !onHandle) return;
    hold = {
      pointer: event.pointerId,
      x: event.clientX,
      y: event.clientY,
      beside: onHandle ? beside : 0,
      before: range.value,
      moving: mouse,
    };
    if (!mouse) return;
    event.preventDefault();
    range.focus({ preventScroll: true });
    track.setPointerCapture(event.pointerId);
    if (!onHandle) follow(event.clientX);
  });
  track.addEventListener('pointermove', (event) => {
    if (event.pointerId !== hold?.pointer) return;
    if (!hold.moving) {
      const [across, along] = [Math.abs(event.clientX - hold.x), Math.abs(event.clientY - hold.y)];
      if (Math.max(across, along) <= SLOP) return;
      if (along >= across) {
        hold = null;
        return;
      }
      hold.moving = true;
      track.setPointerCapture(event.pointerId);
    }
    follow(event.clientX - hold.beside);
  });
  track.addEventListener('pointerup', (event) => {
    if (event.pointerId !== hold?.pointer) return;
    if (hold.moving) tell('change');
    hold = null;
  });
  track.addEventListener('pointercancel', () => {
    // the browser took the finger for a scroll after all
    if (hold?.moving && range.value !== hold.before) {
      range.value = hold.before;
      tell('input');
      tell('change');
    }
    hold = null;
  });
  track.addEventListener('click', (event) => {
    const { pointerType, clientX } = event as PointerEvent;
    const beside = clientX - handleAt();
    if (pointerType === 'mouse' || event.detail === 0 || Math.abs(beside) <= REACH) return;
    moveTo(Number(range.value) + Math.sign(beside));
    tell('change');
  });
  return track;
}
