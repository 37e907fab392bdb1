/** What the page and its workers say to each other: plain data both ways. */
import type { Scene } from '../draw/scene.js';
import type { Design } from '../design/design.js';
import type { Sheet } from '../report/sheets/blocks.js';
import type { EstimateResult } from '../study/estimate/result.js';

export interface SolveRequest {
  /** counts up; a reply names the request it answers */
  id: number;
  option: number;
  design: Design;
  steadyOnly: boolean;
}

export interface SolveReply {
  id: number;
  option: number;
  /** null when the solver itself broke: our fault, told in `fault` */
  result: EstimateResult | null;
  fault: string | null;
  /** time computed [ms] */
  took: number;
}

/** An option with all that a picture of it needs. */
export interface PicturedOption {
  label: string;
  result: EstimateResult;
}

export type ChartId = 'thermometer' | 'steel' | 'gas' | 'loss' | 'draft' | 'options';

export type PictureRequest =
  | { id: number; kind: 'chart'; chart: ChartId; options: PicturedOption[]; current: number; width: number }
  | { id: number; kind: 'sheet'; options: PicturedOption[]; defaults: string[] };

export type PictureReply =
  | { id: number; kind: 'chart'; chart: ChartId; scene: Scene | null; caption: string; took: number }
  | { id: number; kind: 'sheet'; sheet: Sheet; took: number }
  | { id: number; kind: 'fault'; fault: string; took: number };
