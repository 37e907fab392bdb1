/** Stock a stack may be cut from: tube by outside diameter and gauge (common practice, no source), and pipe. */
import { gaugeThickness, PIPES, settle, siIn } from '../../units/index.js';

interface StockTube {
  /** outside diameter of a tube, nominal size of a pipe [in] */
  size: number;
  /** gauge of a tube's wall; a pipe has its standard one */
  gauge?: number;
  /** outside diameter and wall, of a tube that of carbon steel [m] */
  diameter: number;
  wall: number;
}

/** Square tube by its side [m] (common practice, no source). */
interface SquareTube {
  width: number;
  gauge: number;
}

const GAUGE = 11;
const MOST_PIPE = 12;

const tubes: StockTube[] = [3, 4, 5, 6, 8, 10, 12].map((size) => ({
  size,
  gauge: GAUGE,
  diameter: siIn('length', size, 'in'),
  wall: settle(gaugeThickness(GAUGE)!),
}));

const pipes: StockTube[] = PIPES.filter(({ nominal }) => nominal <= MOST_PIPE).map(({ nominal, diameter, walls }) => ({
  size: nominal,
  diameter: settle(diameter),
  wall: settle(walls.std),
}));

/** Round tube and pipe that stacks are chosen from, the smallest first. */
export const STOCK_TUBES: readonly StockTube[] = [...tubes, ...pipes].sort((a, b) => a.diameter - b.diameter);

/** Square tube that stacks are chosen from, the smallest first. */
export const STOCK_SQUARES: readonly SquareTube[] = [3, 4, 5, 6, 8, 10].map((size) => ({
  width: siIn('length', size, 'in'),
  gauge: GAUGE,
}));
