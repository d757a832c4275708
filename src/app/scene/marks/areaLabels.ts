import {
  type FoldedCover,
  ofPattern,
  type Printer,
  partOf,
  type ToolingArea,
  type ToolingFace,
  type Vec3,
} from '../../../core/index.ts';
import { flatLookup } from '../../../output/glb/flatLookup.ts';

/** What is written about an area that can be tooled, and where it lies on the folded cover. */
export interface AreaLabel {
  readonly at: Vec3;
  /** Out of the grain side, unit vector. */
  readonly out: Vec3;
  readonly words: string;
}

const NAMES: Readonly<Record<ToolingFace, string>> = {
  front: 'front',
  spine: 'spine',
  back: 'back',
  frontPocket: 'front pocket',
  backPocket: 'back pocket',
  strap: 'strap',
};

/** The sizes of the clear parts of areas, at the middle of each; areas that the folded cover does not show are left out. */
export function areaLabels(cover: FoldedCover, areas: readonly ToolingArea[], print: Printer): AreaLabel[] {
  return areas.flatMap((area) => {
    const part = partOf(area);
    const mesh = cover.parts.find((each) => each.part === part);
    const grain = mesh?.faces.find(({ face }) => face === 'grain');
    if (!mesh || !grain) return [];
    const { scale, offset } = ofPattern(area, part);
    const find = flatLookup(mesh.uvs, mesh.indices.subarray(grain.start, grain.start + grain.count));
    const place = find((area.centre[0] - offset[0]) / scale[0], area.centre[1] - offset[1]);
    if (place === null) return [];
    const { corners, shares } = place;
    const between = (values: Float32Array): Vec3 => {
      const along = (c: 0 | 1 | 2): number => corners.reduce((sum, k, i) => sum + shares[i]! * values[3 * k + c]!, 0);
      return [along(0), along(1), along(2)];
    };
    const { clear } = area;
    const words =
      clear === null
        ? 'nothing clear of the margins'
        : `clear ${print.length(clear.x[1] - clear.x[0])} × ${print.length(clear.y[1] - clear.y[0])}`;
    return [{ at: between(mesh.positions), out: between(mesh.normals), words: `${NAMES[area.face]}: ${words}` }];
  });
}
