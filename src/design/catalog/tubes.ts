/** Round stock a stack may be cut from: tube by outside diameter and gauge (common practice, no source), and pipe. */
import { gaugeThickness, PIPES } from '../../units/index.js';

export interface StockTube {
  /** how a shop orders it */
  name: string;
  /** outside diameter and wall [m] */
  diameter: number;
  wall: number;
}

const INCH = 0.0254;
const WALL = gaugeThickness(11) ?? 0;

const tubes: StockTube[] = [3, 4, 5, 6, 8, 10, 12].map((inches) => ({
  name: `${inches} in tube, 11 ga`,
  diameter: inches * INCH,
  wall: WALL,
}));

const pipes: StockTube[] = PIPES.filter((pipe) => pipe.nominal <= 12).map((pipe) => ({
  name: `${pipe.nominal} in pipe, standard wall`,
  diameter: pipe.diameter,
  wall: pipe.walls.std,
}));

export const STOCK_TUBES: readonly StockTube[] = [...tubes, ...pipes].sort((a, b) => a.diameter - b.diameter);
