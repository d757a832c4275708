import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../src/core/fold/coverDesign.ts';
import { LAYERS, type PieceDrawing } from '../../src/core/pattern/drawing.ts';
import { mirroredDrawing } from '../../src/core/pattern/mirrorDrawing.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import type { Paper } from '../../src/output/pdf/paper.ts';
import { type Tiling, tiling } from '../../src/output/pdf/tiling.ts';
import { soundJob } from '../jobArbitrary.ts';
import { checkLaw, lawCases } from '../laws.ts';
import { nth } from '../nth.ts';
import { helvetica, wordsBox } from '../output/wordsBox.ts';
import { constructedJob } from '../property/constructionArbitrary.ts';
import { proofSize } from './proofSize.ts';

const JOBS = proofSize(500, lawCases(10));

/** Steps of the search for a better offset, mm. */
const GRID = 0.25;

/** Half the line that a hole is drawn with, mm. */
const PEN = 0.1;

type Stretch = readonly [number, number];

/** Where each hole, slit and line of words begins and ends along an axis, by published metrics of the letters. */
function marksAlong({ layers }: PieceDrawing, axis: 0 | 1): Stretch[] {
  return LAYERS.flatMap((layer) =>
    layers[layer].flatMap((entity): Stretch[] => {
      if (entity.kind === 'text') {
        const width = helvetica.widthOfTextAtSize(entity.text, entity.height);
        const back = entity.align === 'middle' ? width / 2 : 0;
        const [cos, sin] = [Math.cos(entity.rotation), Math.sin(entity.rotation)];
        const at = [entity.at[0] - back * cos, entity.at[1] - back * sin] as const;
        const places = wordsBox({ ...entity, at, width }).map((corner) => corner[axis]);
        return [[Math.min(...places), Math.max(...places)]];
      }
      if (layer !== 'hole') return [];
      if (entity.kind === 'arc')
        return [[entity.centre[axis] - entity.radius - PEN, entity.centre[axis] + entity.radius + PEN]];
      if (entity.kind !== 'line') return [];
      const ends = [entity.from[axis], entity.to[axis]];
      return [[Math.min(...ends) - PEN, Math.max(...ends) + PEN]];
    }),
  );
}

interface Line {
  readonly at: number;
  readonly isJoint: boolean;
}

/** The edges of the windows within a tiling and the joints between them, along an axis. */
function linesAlong({ tiles }: Tiling, axis: 0 | 1): Line[] {
  const first = (axis === 0 ? tiles.map(({ x }) => x) : tiles.map(({ y }) => y)).filter(
    (at, i, all) => all.indexOf(at) === i,
  );
  const starts = first.sort((a, b) => a - b);
  const size = axis === 0 ? nth(tiles, 0).width : nth(tiles, 0).height;
  return starts.slice(1).flatMap((at, i) => {
    const end = nth(starts, i) + size;
    return [
      { at, isJoint: false },
      { at: (at + end) / 2, isJoint: true },
      { at: end, isJoint: false },
    ];
  });
}

/** @param wider by how much each mark is taken wider at both ends, mm */
const crossings = (lines: readonly Line[], marks: readonly Stretch[], shift: number, wider: number): number =>
  lines.reduce((sum, { at }) => {
    const line = at + shift;
    return sum + marks.filter(([from, to]) => line > from - wider && line < to + wider).length;
  }, 0);

/** Joints first: how often they go through a mark, and then how often an edge of a window does. */
const ranked = (lines: readonly Line[], marks: readonly Stretch[], shift: number, wider: number): number =>
  1000 *
    crossings(
      lines.filter(({ isJoint }) => isJoint),
      marks,
      shift,
      wider,
    ) +
  crossings(
    lines.filter(({ isJoint }) => !isJoint),
    marks,
    shift,
    wider,
  );

/** Widths of words differ by less than this between the metrics, mm. */
const SAME = 0.01;

/** The least rank of any offset on the grid that still covers the piece. */
function fewest(laid: Tiling, piece: PieceDrawing, axis: 0 | 1): number {
  const size = axis === 0 ? piece.width : piece.height;
  const low = Math.min(...laid.tiles.map(({ x, y }) => (axis === 0 ? x : y)));
  const high = Math.max(...laid.tiles.map(({ x, y, width, height }) => (axis === 0 ? x + width : y + height)));
  const [lines, marks] = [linesAlong(laid, axis), marksAlong(piece, axis)];
  let least = Number.POSITIVE_INFINITY;
  for (let shift = size + 2 - high; shift <= -2 - low + 1e-9 && least > 0; shift += GRID)
    least = Math.min(least, ranked(lines, marks, shift, SAME));
  return least;
}

const counts = { tiled: 0, clear: 0, holes: 0, words: 0 };

describe('the joints of a tiled piece', () => {
  test('go through no hole, slit or word where one offset avoids them, else through no more than the best offset does', () => {
    const paper = fc.constantFrom<Paper[]>('A4', 'Letter', 'A3', 'Tabloid', { roll_mm: 300 });
    checkLaw(
      fc.property(constructedJob, paper, fc.boolean(), (document, sheet, isMirrored) => {
        const drawn = patternDrawing(coverDesign(soundJob(document)));
        for (const piece of (isMirrored ? mirroredDrawing(drawn) : drawn).pieces) {
          const laid = tiling(piece, sheet, { x: 1, y: 1 });
          if (laid.tiles.length === 1) continue;
          counts.tiled++;
          for (const axis of [0, 1] as const)
            expect(ranked(linesAlong(laid, axis), marksAlong(piece, axis), 0, -SAME)).toBeLessThanOrEqual(
              fewest(laid, piece, axis),
            );
          const { holes, words } = laid.crossed;
          const left = ([0, 1] as const).reduce<number>(
            (sum, axis) =>
              sum +
              crossings(
                linesAlong(laid, axis).filter(({ isJoint }) => isJoint),
                marksAlong(piece, axis),
                0,
                -SAME,
              ),
            0,
          );
          expect(holes + words > 0).toBe(left > 0);
          counts.clear += left === 0 ? 1 : 0;
          counts.holes += holes;
          counts.words += words;
        }
      }),
      { cases: JOBS },
    );
    console.info(
      `joints: ${counts.tiled} tiled pieces, ${counts.clear} with none through a mark; ${counts.holes} holes and ${counts.words} words crossed in the others`,
    );
  });
});
