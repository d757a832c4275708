import type { CoverDesign } from '../fold/coverDesign.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { bookMeshes } from './bookMeshes.ts';
import type { MeshData } from './meshData.ts';
import type { Staging } from './staging.ts';
import type { BookPlace } from './standing.ts';

/**
 * The book of one pose, in its place.
 * @param leafSwing swing of the outermost leaves beyond that which the pockets force on a thin book, radians
 */
export function bookParts(
  design: CoverDesign,
  point: RangePoint,
  { standing, range }: Staging,
  leafSwing: number,
): MeshData[] {
  const forced = range?.forced ?? 0;
  const swing = leafSwing + forced / 2;
  const parts = bookMeshes(design, point, {
    opening: standing.swings,
    leaves: { front: swing, back: swing },
    forced,
    mouths: standing.mouths,
  });
  return parts.map((part) => placed(part, standing.place));
}

/** A solid turned about the spine's axis and moved. */
function placed(mesh: MeshData, { turn, shift: [x, y] }: BookPlace): MeshData {
  if (turn === 0 && x === 0 && y === 0) return mesh;
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const turned = (from: Float32Array, dx: number, dy: number): Float32Array => {
    const to = from.slice();
    for (let k = 0; k < to.length; k += 3) {
      to[k] = c * from[k]! - s * from[k + 1]! + dx;
      to[k + 1] = s * from[k]! + c * from[k + 1]! + dy;
    }
    return to;
  };
  return { ...mesh, positions: turned(mesh.positions, x, y), normals: turned(mesh.normals, 0, 0) };
}
