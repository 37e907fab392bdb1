/** Whether what a design file says of a logger's columns can be true of this pit. */
import type { Design, StationName } from './design.js';
import { IGNORE } from './logColumns.js';
import { columnProblem, splitHeader, squashed } from './logHeaders.js';
import { placesOf } from './places.js';
import type { Reading } from './reading.js';

export function checkLog(design: Design, stations: readonly StationName[], reading: Reading): void {
  const seen = new Map<string, string>();
  for (const [header, meaning] of Object.entries(design.log?.columns ?? {})) {
    const path = ['log', 'columns', header];
    const twin = seen.get(squashed(header));
    if (twin !== undefined) {
      reading.fault(path, {
        code: 'duplicate-key',
        message: `names the same header as '${twin}': case and spaces don't count`,
        allowed: 'each header once',
        atKey: true,
      });
    }
    seen.set(squashed(header), header);
    if (squashed(meaning) === IGNORE) continue;
    const problem = columnProblem(meaning, stations, reading.otherUnits, placesOf(design));
    if (!problem) continue;
    const { code, message, allowed, nearest } = problem;
    const ofUnit = code === 'unknown-unit' && nearest !== undefined;
    reading.fault(path, {
      code,
      message,
      allowed: code === 'unknown-name' ? `${allowed}; or ${IGNORE}` : allowed,
      nearest: ofUnit ? `${splitHeader(meaning).name} [${nearest}]` : nearest,
    });
  }
}
