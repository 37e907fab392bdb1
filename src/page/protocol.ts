/** What the page and its solving workers say to each other. */
import type { Design } from '../design/design.js';
import type { EstimateResult } from '../study/result.js';

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
