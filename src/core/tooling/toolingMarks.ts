import type { CoverDesign } from '../fold/coverDesign.ts';
import type { ToolingDesign } from '../job/toolingSchema.ts';
import type { Segment } from '../math/contour.ts';
import { addScaled, subtract, type Vec2 } from '../math/vec2.ts';
import {
  type Drawing,
  type Entity,
  line,
  type Path,
  type PieceId,
  type PieceTooling,
  path,
  type ToolingMarks,
} from '../pattern/drawing.ts';
import { patternDrawing } from '../pattern/patternDrawing.ts';
import { type LetterFaces, type PlacedDesign, placedDesign } from './placedDesign.ts';
import { onCutPiece, type ToolingArea } from './toolingArea.ts';
import { toolingAreas } from './toolingAreas.ts';

/** A face of the cover with the designs on it. */
export interface TooledFace {
  readonly area: ToolingArea;
  readonly designs: readonly PlacedDesign[];
}

/**
 * Every face of a cover that can be tooled, with the designs of the job on it.
 * @param faces letters that are loaded; a title in others has no lines and says so
 */
export const tooledFaces = (design: CoverDesign, faces: LetterFaces): TooledFace[] =>
  toolingAreas(design).map((area) => ({
    area,
    designs: design.job.tooling.designs
      .filter((each) => each.area === area.face)
      .map((each) => placedDesign(each, area, design.job.tooling.artworks, faces)),
  }));

/** Designs on faces that this cover does not have, such as a strap taken off: they stay in the job and are not tooled. */
export function homelessDesigns(design: CoverDesign): readonly ToolingDesign[] {
  const faces = toolingAreas(design).map(({ face }) => face);
  return design.job.tooling.designs.filter(({ area }) => !faces.includes(area));
}

/** The marks of tooled faces on the pieces as they are cut: the clear part with its centre lines, and the designs. */
export function toolingMarks(tooled: readonly TooledFace[]): ToolingMarks {
  const marks: Partial<Record<PieceId, PieceTooling>> = {};
  for (const { area, designs } of tooled) {
    const id = patternOf(area);
    const before = marks[id] ?? { area: [], tooling: [] };
    marks[id] = {
      area: [...before.area, ...areaMarks(area)],
      tooling: [
        ...before.tooling,
        ...designs.flatMap((placed) => designEntities(placed, (point) => onCutPiece(area, point))),
      ],
    };
  }
  return marks;
}

/** The pattern that a face is tooled on: pockets that are tooled have one each. */
const patternOf = ({ piece, face }: ToolingArea): PieceId =>
  piece === 'pocket' && face === 'backPocket' ? 'backPocket' : piece;

/** The pattern of a job with its tooling; the plain pattern where nothing is tooled. */
export function tooledPattern(design: CoverDesign, faces: LetterFaces): Drawing {
  const tooled = tooledFaces(design, faces);
  return patternDrawing(design, tooled.some(({ designs }) => designs.length > 0) ? toolingMarks(tooled) : {});
}

/** The clear part of an area and its two centre lines, across the flat part. */
function areaMarks(area: ToolingArea): Entity[] {
  const { clear, flat, centre } = area;
  const at = (x: number, y: number): Vec2 => onCutPiece(area, [x, y]);
  const lines: Segment[] = [
    line(at(centre[0], flat.y[0]), at(centre[0], flat.y[1])),
    line(at(flat.x[0], centre[1]), at(flat.x[1], centre[1])),
  ];
  if (clear === null) return lines;
  const [x, y] = [clear.x, clear.y];
  return [...lines, polyline([at(x[0], y[0]), at(x[1], y[0]), at(x[1], y[1]), at(x[0], y[1]), at(x[0], y[0])])];
}

/**
 * What is drawn of a design.
 * @param place a place of the finished face on the drawing; it keeps lines straight
 */
export function designEntities({ lines, pictures }: PlacedDesign, place: (point: Vec2) => Vec2): Entity[] {
  const laid = pictures.map(({ artwork, origin, along, down }): Entity => {
    const from = place(origin);
    const toward = (step: Vec2): Vec2 => subtract(place(addScaled(origin, step, 1)), from);
    return { kind: 'picture', artwork, origin: from, along: toward(along), down: toward(down) };
  });
  return [...laid, ...lines.map((points) => polyline(points.map(place)))];
}

/** Points as a path, closed where the last is the first. */
function polyline(points: readonly Vec2[]): Path {
  const [first, last] = [points[0]!, points.at(-1)!];
  const segments = points.slice(1).map((to, i) => line(points[i]!, to));
  return path(segments, points.length > 3 && first[0] === last[0] && first[1] === last[1]);
}
