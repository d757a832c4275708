import type { CoverDesign } from '../fold/coverDesign.ts';
import type { ToolingDesign, ToolingFace } from '../job/toolingSchema.ts';
import { cross, distance } from '../math/vec2.ts';
import type { PlacedDesign } from './placedDesign.ts';
import { tooledFaces } from './toolingMarks.ts';

/**
 * Line of a letter over the height of a capital: the mean of outlined capitals, small letters and figures of the four outline
 * faces that come with the tool, 3.4 to 6.1. A letter of single strokes has half of it.
 */
const LETTER_LINE = 5;

/** How far apart the strokes are that a picture is worked in, mm. Assumption. */
const STROKES = 1;

/** What is tooled on one face, on the finished cover. */
export interface FaceTooling {
  readonly face: ToolingFace;
  /** The clear part of the face, mm2. */
  readonly clear: number;
  /** Length of the lines, mm; of a title estimated. */
  readonly line: number;
  /** Area of pictures, mm2. */
  readonly pictures: number;
}

/** What is tooled on a cover. */
export interface ToolingAmount {
  readonly faces: readonly FaceTooling[];
  /** Length that the work is timed by, mm: all lines, and of pictures the strokes. */
  readonly line: number;
  /** Whether a title is in it, whose length does not wait for its letters but is estimated by their number and height. */
  readonly isEstimated: boolean;
}

/** How much is tooled on a cover: 0 of a line, and no face, where nothing is. */
export function toolingAmount(design: CoverDesign): ToolingAmount {
  if (design.job.tooling.designs.length === 0) return { faces: [], line: 0, isEstimated: false };
  const tooled = tooledFaces(design, new Map()).filter(({ designs }) => designs.length > 0);
  const faces = tooled.map(({ area: { face, clear }, designs }): FaceTooling => {
    const sum = (amount: (placed: PlacedDesign) => number): number =>
      designs.reduce((all, placed) => all + amount(placed), 0);
    return {
      face,
      clear: clear === null ? 0 : (clear.x[1] - clear.x[0]) * (clear.y[1] - clear.y[0]),
      line: sum((placed) => drawnLength(placed) + titleLength(placed.design)),
      pictures: sum(({ pictures }) => pictures.reduce((all, { along, down }) => all + Math.abs(cross(along, down)), 0)),
    };
  });
  return {
    faces,
    line: faces.reduce((all, { line, pictures }) => all + line + pictures / STROKES, 0),
    isEstimated: tooled.some(({ designs }) => designs.some((placed) => placed.design.kind === 'title')),
  };
}

const drawnLength = ({ lines }: PlacedDesign): number =>
  lines.reduce((all, line) => all + line.slice(1).reduce((sum, to, i) => sum + distance(line[i]!, to), 0), 0);

function titleLength(design: ToolingDesign): number {
  if (design.kind !== 'title') return 0;
  const letters = [...design.text].filter((letter) => letter.trim() !== '').length;
  return letters * LETTER_LINE * design.height_mm * design.repeat.columns * design.repeat.rows;
}
