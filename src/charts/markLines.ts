import type { Chart, Plugin } from 'chart.js';
import { FONT_FAMILY, FONT_SIZE, INK, PAPER } from '../draw/theme.js';
import { meet, type Box } from '../draw/box.js';
import { coveredBy, takeRoom, textsIn } from './freeRoom.js';

/** A straight line across the plot at one value of an axis, with a text beside it where there is room. */
export interface MarkLine {
  axis: 'x' | 'y';
  value: number;
  /** empty: none */
  text: string;
  dash: number[];
  /** the text of a level line speaks of what lies above it, or below */
  side?: 'above' | 'below';
}

const LINE = FONT_SIZE.label + 8;
/** Between a text and its line, the plot's edge, and the end of its patch of paper [px]. */
const BESIDE = 6;
const EDGE = 4;
const PATCH = 3;
/** Places for a text along a level line are so far apart [px], and it stands so many lines from it at most. */
const ALONG = 6;
const FARTHEST = 14;
/** The same up an upright line [px]. */
const UP = 6;
/** A text across another mark's line is worse than one in a place less usual, and better than one over a curve. */
const OVER_LINE = 0.5;

/**
 * Draws the marks over the grid and under the data, and their texts, each on a patch of paper where it covers least.
 * Names that stand at their curves are drawn by plugins before this one.
 */
export function markLines(marks: MarkLine[]): Plugin {
  return {
    id: 'markLines',
    beforeDatasetsDraw({ ctx, chartArea, scales }) {
      ctx.save();
      ctx.strokeStyle = INK;
      ctx.lineWidth = 1.25;
      for (const { axis, value, dash } of marks) {
        const at = scales[axis].getPixelForValue(value);
        ctx.setLineDash(dash);
        ctx.beginPath();
        ctx.moveTo(axis === 'x' ? at : chartArea.left, axis === 'x' ? chartArea.top : at);
        ctx.lineTo(axis === 'x' ? at : chartArea.right, axis === 'x' ? chartArea.bottom : at);
        ctx.stroke();
      }
      ctx.restore();
    },
    afterDatasetsDraw(chart) {
      const { ctx } = chart;
      ctx.save();
      ctx.font = `600 ${FONT_SIZE.label}px ${FONT_FAMILY}`;
      ctx.textBaseline = 'middle';
      const named = marks.filter(({ text }) => text !== '');
      // the first takes the best place, where another may have none left
      const [usual, backwards] = [named, [...named].reverse()].map((order) => placed(chart, order, marks));
      for (const { mark, box } of usual.cost > backwards.cost ? backwards.texts : usual.texts) {
        takeRoom(chart, box);
        if (mark.axis === 'y') lead(chart, mark, box);
        ctx.fillStyle = PAPER;
        ctx.globalAlpha = 0.85;
        ctx.fillRect(box.left, box.top, box.right - box.left, box.bottom - box.top);
        ctx.globalAlpha = 1;
        ctx.fillStyle = INK;
        ctx.fillText(mark.text, box.left + PATCH, (box.top + box.bottom) / 2);
      }
      ctx.restore();
    },
  };
}

interface Placed {
  texts: { mark: MarkLine; box: Box }[];
  /** what they cover together */
  cost: number;
}

/** Places for the texts of marks, one after the other. */
function placed(chart: Chart, order: readonly MarkLine[], marks: readonly MarkLine[]): Placed {
  const texts: Placed['texts'] = [];
  let sum = 0;
  for (const mark of order) {
    const { box, cost } = roomFor(chart, mark, marks, texts);
    texts.push({ mark, box });
    sum += cost;
  }
  return { texts, cost: sum };
}

/** Of all places beside a line the first that covers nothing, else the one that covers least. */
function roomFor(
  chart: Chart,
  mark: MarkLine,
  marks: readonly MarkLine[],
  texts: Placed['texts'],
): { box: Box; cost: number } {
  const { scales } = chart;
  const width = chart.ctx.measureText(mark.text).width;
  let best: { box: Box; cost: number } | null = null;
  for (const box of placesFor(chart, mark, width)) {
    const across = marks.filter((other) => {
      if (other === mark) return false;
      const at = scales[other.axis].getPixelForValue(other.value);
      return other.axis === 'x' ? at > box.left && at < box.right : at > box.top && at < box.bottom;
    });
    const among = (room: Box) => texts.filter((other) => meet(room, other.box)).length;
    const lead = leadOf(chart, mark, box);
    const led = mark.axis === 'y' ? textsIn(chart, lead) + among(lead) : 0;
    const cost = coveredBy(chart, box) + among(box) + led + OVER_LINE * across.length;
    if (cost === 0) return { box, cost };
    if (!best || cost < best.cost) best = { box, cost };
  }
  return best!;
}

/** From a text that does not stand at its level line to that line. */
function lead(chart: Chart, mark: MarkLine, box: Box): void {
  const { ctx } = chart;
  const { left: x, top, bottom } = leadOf(chart, mark, box);
  if (bottom - top < LINE / 2) return;
  ctx.strokeStyle = INK;
  ctx.lineWidth = 1;
  ctx.beginPath();
  ctx.moveTo(x, top);
  ctx.lineTo(x, bottom);
  ctx.stroke();
}

function leadOf({ scales }: Chart, { value }: MarkLine, { left, top, bottom }: Box): Box {
  const at = scales.y.getPixelForValue(value);
  const ends = at > bottom ? { top: bottom, bottom: at } : { top: at, bottom: top };
  return { left: left + BESIDE, right: left + BESIDE, ...ends };
}

/**
 * Along a level line from the left, above it and then below, then farther from it; up an upright line from its foot,
 * behind it and before it.
 */
function* placesFor({ chartArea, scales }: Chart, { axis, value, side }: MarkLine, width: number): Generator<Box> {
  const at = scales[axis].getPixelForValue(value);
  const first = chartArea.left + EDGE;
  const last = Math.max(first, chartArea.right - width - EDGE);
  const box = (left: number, middle: number): Box => ({
    left: left - PATCH,
    right: left + width + PATCH,
    top: middle - LINE / 2 + 2,
    bottom: middle + LINE / 2 - 2,
  });
  if (axis === 'y') {
    const ways = side === 'above' ? [-1] : side === 'below' ? [1] : [-1, 1];
    for (let row = 0.5; row < FARTHEST; row++) {
      for (const middle of ways.map((way) => at + way * row * LINE)) {
        if (middle < chartArea.top + LINE / 3 || middle > chartArea.bottom - LINE / 3) continue;
        for (let left = first + EDGE; left <= last; left += ALONG) yield box(left, middle);
        yield box(last, middle);
      }
    }
    yield box(last, at + ways[0] * 0.5 * LINE);
    return;
  }
  for (let middle = chartArea.bottom - 0.7 * LINE; middle > chartArea.top + LINE / 2; middle -= UP) {
    for (const left of [at + BESIDE, at - BESIDE - width]) {
      if (left >= first && left <= last) yield box(left, middle);
    }
  }
  yield box(Math.min(Math.max(first, at + BESIDE), last), chartArea.bottom - 0.7 * LINE);
}
