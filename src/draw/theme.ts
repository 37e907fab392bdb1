import type { StationName } from '../design/design.js';

/** How every chart looks: one place, so that files on disk and pages match. Sizes in pixels of the logical size. */
export const SIZE = { width: 1000, height: 625 };
/** The shipped font, as charts and sheets name it. */
export const FONT_FAMILY = 'Barlow';
/** with what stands in where a document can't bring the font */
export const FONT_STACK = "Barlow, 'DejaVu Sans', Arial, sans-serif";
/** Sizes of letters in charts [px]. */
export const FONT_SIZE = { title: 22, text: 15, label: 14 };

/** Colour of text and outlines. */
export const INK = '#1f2933';
/** Colour of what stands back: axes, second lines. */
export const FAINT_INK = '#52606d';
/** Colour of lines behind curves. */
export const GRID = '#e4e7eb';
/** Colour of the ground. */
export const PAPER = '#ffffff';

/** Fills of a drawing: what isn't steel or gas. */
export const SHADE = '#e4e7eb';

/**
 * Temperature scale from cold to hot, light to dark so that a grey print keeps its order: shares 0, 1/4 ... 1, between
 * them by straight mixing.
 */
export const HEAT = ['#fdf3e1', '#f8cf94', '#ee9a55', '#c9552f', '#7d2318'] as const;

/**
 * Okabe & Ito's palette (2008), which people with any colour vision can tell apart; its yellow is left out on white.
 */
export const COLOURS = {
  blue: '#0072B2',
  vermilion: '#D55E00',
  green: '#009E73',
  purple: '#CC79A7',
  orange: '#E69F00',
  sky: '#56B4E9',
} as const;

/** How a curve is told from others, with colours or without [px]. */
export interface LineStyle {
  colour: string;
  /** lengths of dash and gap; empty is a solid line */
  dash: number[];
}

const DOTS = [2, 4];

/** One style a station, the same in every chart; colour and dash both tell it, so that a grey print still does. */
export const STATION_STYLES: Record<StationName, LineStyle> = {
  firebox: { colour: COLOURS.vermilion, dash: [] },
  plenumFireEnd: { colour: COLOURS.orange, dash: DOTS },
  plenumMiddle: { colour: COLOURS.green, dash: DOTS },
  plenumStackEnd: { colour: COLOURS.blue, dash: DOTS },
  fireEnd: { colour: COLOURS.orange, dash: [12, 4] },
  middle: { colour: COLOURS.green, dash: [] },
  stackEnd: { colour: COLOURS.blue, dash: [7, 4] },
  uprightLower: { colour: COLOURS.purple, dash: [12, 4, 3, 4] },
  uprightUpper: { colour: COLOURS.sky, dash: [4, 3] },
};

/** A grate's middle among them, and a place by which the cook steers. */
export const PLACE_STYLES = {
  grate: { colour: INK, dash: DOTS },
  gauge: { colour: INK, dash: [] },
} as const satisfies Record<string, LineStyle>;

/** The two states that charts set side by side. */
export const STATE_STYLES = {
  held: { colour: COLOURS.blue, dash: [] },
  assumed: { colour: COLOURS.vermilion, dash: [8, 4] },
} as const satisfies Record<string, { colour: string; dash: readonly number[] }>;

/** Sheets of paper, in pixels of 1/96 in. */
export const SHEETS = {
  letter: { width: 816, height: 1056, css: 'letter' },
  a4: { width: 794, height: 1123, css: 'A4' },
} as const;
/** Sheets that reports are laid out for. */
export type PaperName = keyof typeof SHEETS;

/** Type, spacing and lines of a printed sheet, in pixels of 1/96 in. */
export const SHEET = {
  margin: 48,
  shop: 21,
  title: 15,
  lead: 15.5,
  text: 11.5,
  small: 10,
  row: 17.5,
  gap: 10,
  /** between columns */
  gutter: 22,
  rule: 1.5,
  thin: 0.6,
  /** behind the sheets on a screen, and behind every other row */
  desk: '#dfe3e8',
  band: '#f5f7f9',
} as const;
