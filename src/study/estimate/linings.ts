/** What a lining does in a settled state: its hot face, and the steel behind it. */
import type { PartName } from '../../design/design.js';
import type { Pit } from '../../network/pit.js';
import type { LiningState } from './result.js';

/** Lined walls, part by part, each with its hottest place. */
export function liningStates({ model, geometry, design }: Pit, x: Float64Array): LiningState[] {
  const { nodes } = model.network;
  const lined = nodes.flatMap(({ lines }, hot) => (lines === undefined ? [] : [{ hot, steel: lines }]));
  return geometry.parts.flatMap(({ name: part, faces }) =>
    faces.flatMap((face): LiningState[] => {
      const own = lined.filter(({ steel }) => nodes[steel].part === part && nodes[steel].face === face.name);
      if (!face.wall.lining || own.length === 0) return [];
      const hottest = own.reduce((most, each) => (x[each.hot] > x[most.hot] ? each : most));
      return [
        {
          part: part as PartName,
          face: face.name,
          material: design[part]!.lining!.material,
          hot_K: x[hottest.hot],
          steel_K: x[hottest.steel],
        },
      ];
    }),
  );
}
