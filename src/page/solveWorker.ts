/** Runs in a worker: the same estimate as the command's, so that the page stays free to answer the hand. */
import { estimate } from '../study/estimate/estimate.js';
import type { SolveReply, SolveRequest } from './protocol.js';

interface WorkerScope {
  onmessage: ((event: { data: SolveRequest }) => void) | null;
  postMessage(reply: SolveReply): void;
}

const scope = globalThis as unknown as WorkerScope;

scope.onmessage = ({ data: { id, option, design, steadyOnly } }) => {
  const start = performance.now();
  try {
    const result = estimate(design, { steadyOnly });
    scope.postMessage({ id, option, result, fault: null, took: performance.now() - start });
  } catch (error) {
    const fault = error instanceof Error ? error.message : String(error);
    scope.postMessage({ id, option, result: null, fault, took: performance.now() - start });
  }
};
