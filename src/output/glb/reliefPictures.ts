import type { PartRelief, Vec2 } from '../../core/index.ts';
import type { Pixels } from '../png.ts';

/**
 * The pictures of a relief for a renderer, and where they lie on the part's mesh. They lie on their side: their right is the
 * head of the part, their top the edge that its u begins at. A part folds about lines along its height, so that the right of the
 * picture is one direction in space in every pose, and the tangents of a vertex need not be bent.
 */
export interface ReliefPictures {
  /** Normals of the pressed surface: red to the right, green up, blue out of the grain side (glTF 2.0, 3.9.3). */
  readonly normals: Pixels;
  /** Share of the leather's colour, in sRGB: darker where it is pressed. */
  readonly tone: Pixels;
  /** From v and u of the mesh, mm, to glTF's texture coordinates, which begin at the top left: scale * (v, u) + offset. */
  readonly scale: Vec2;
  readonly offset: Vec2;
}

/**
 * Untouched leather round the map, mm: a renderer goes on with the colour of the border beyond it, and in the small pictures
 * that it makes for a far view a pixel of the border is as wide as many of the map.
 */
const ROUND = 4;

/** Share of the colour, in sRGB, that is left where the leather is pressed deepest. Judged by eye. */
const DARKEST = 0.7;

/** @param depth of the map's 255, mm */
export function reliefPictures({ map, scale, offset }: PartRelief, depth: number): ReliefPictures {
  const { columns, rows, size, depths } = map;
  const pixel: Vec2 = [size[0] / columns, size[1] / rows];
  const [besides, above] = [Math.ceil(ROUND / pixel[0]), Math.ceil(ROUND / pixel[1])];
  const [width, height] = [rows + 2 * above, columns + 2 * besides];
  const at = (i: number, j: number): number =>
    i < 0 || j < 0 || i >= columns || j >= rows ? 0 : depths[j * columns + i]! / 255;
  const normals = new Uint8Array(3 * width * height);
  const tone = new Uint8Array(width * height);
  for (let k = 0; k < width * height; k++) {
    const [i, j] = [Math.floor(k / width) - besides, (k % width) - above];
    // A height -d has the normal (dd/dx, dd/dy, 1).
    const x = (depth * (at(i + 1, j) - at(i - 1, j))) / (2 * pixel[0]);
    const y = (depth * (at(i, j + 1) - at(i, j - 1))) / (2 * pixel[1]);
    const unit = 127.5 / Math.hypot(x, y, 1);
    normals[3 * k] = Math.round(127.5 + y * unit);
    normals[3 * k + 1] = Math.round(127.5 - x * unit);
    normals[3 * k + 2] = Math.round(127.5 + unit);
    tone[k] = Math.round(255 * (1 - (1 - DARKEST) * at(i, j)));
  }
  const [across, up] = [columns / height, rows / width];
  return {
    normals: { width, height, channels: 3, bytes: normals },
    tone: { width, height, channels: 1, bytes: tone },
    scale: [scale[1] * up, scale[0] * across],
    offset: [offset[1] * up + above / width, offset[0] * across + besides / height],
  };
}
