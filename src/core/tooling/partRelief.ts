import type { CoverDesign } from '../fold/coverDesign.ts';
import type { Vec2 } from '../math/vec2.ts';
import type { PartName } from '../solid/meshData.ts';
import type { LetterFaces } from './placedDesign.ts';
import { type ReliefMap, reliefMap } from './reliefMap.ts';
import type { ToolingArea } from './toolingArea.ts';
import { tooledFaces } from './toolingMarks.ts';

/** Parts of the folded cover that are tooled. */
export const TOOLED_PARTS = ['outside', 'frontPocket', 'backPocket', 'strap'] as const satisfies readonly PartName[];
export type TooledPart = (typeof TOOLED_PARTS)[number];

/** The relief of a part of the folded cover, and where it lies on it. */
export interface PartRelief {
  readonly part: TooledPart;
  readonly map: ReliefMap;
  /**
   * From the uv of the part's mesh to the map: place = scale * uv + offset, (0, 0) at its lower left corner, (1, 1) at its
   * upper right one.
   */
  readonly scale: Vec2;
  readonly offset: Vec2;
}

/**
 * The relief of each tooled part of a cover; parts without tooling are left out.
 * @param faces letters that are loaded; a title in others is left out
 */
export function partReliefs(design: CoverDesign, faces: LetterFaces): PartRelief[] {
  const tooled = tooledFaces(design, faces);
  return TOOLED_PARTS.flatMap((part) => {
    const own = tooled.filter(({ area }) => partOf(area) === part);
    const map = reliefMap(own, design.job.tooling.line_mm);
    if (map === null) return [];
    const { scale, offset } = ofPattern(own[0]!.area, part);
    const toMap = (value: number, axis: 0 | 1): number => (value - map.origin[axis]) / map.size[axis];
    return [
      {
        part,
        map,
        scale: [scale[0] / map.size[0], scale[1] / map.size[1]],
        offset: [toMap(offset[0], 0), toMap(offset[1], 1)],
      },
    ];
  });
}

/** The part of the folded cover whose grain side has an area. */
export function partOf({ face, piece }: ToolingArea): TooledPart {
  return piece === 'outside' || face === 'front' || face === 'spine' || face === 'back' ? 'outside' : face;
}

/**
 * From the uv of a part's mesh to the frame of its areas, mm: place = scale * uv + offset. The uv of the outside runs from
 * the front cut edge, that of a pocket from the fore-edge and that of a strap from its sewn end: against x where that edge or
 * end is at the right.
 */
export const ofPattern = ({ size }: ToolingArea, part: TooledPart): { readonly scale: Vec2; readonly offset: Vec2 } =>
  part === 'frontPocket' ? { scale: [1, 1], offset: [0, 0] } : { scale: [-1, 1], offset: [size[0], 0] };
