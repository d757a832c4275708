import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CoverDesign, coverDesign } from '../../src/core/fold/coverDesign.ts';
import { flattened, segmentEnd, segmentStart } from '../../src/core/math/contour.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import type { Drawing, Entity, PieceDrawing } from '../../src/core/pattern/drawing.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { type SeamHole, turnAxis } from '../../src/core/pattern/seam.ts';
import { holeCount, seamHoles } from '../../src/core/pattern/seamHoles.ts';
import { defined } from '../defined.ts';
import { soundJob } from '../jobArbitrary.ts';
import { checkLaw, lawCases } from '../laws.ts';
import { nth } from '../nth.ts';
import { constructedJob } from './constructionArbitrary.ts';

const law = (check: (design: CoverDesign, drawing: Drawing) => void) =>
  checkLaw(
    fc.property(constructedJob, (document) => {
      const design = coverDesign(soundJob(document));
      check(design, patternDrawing(design));
    }),
  );

const centre = (mark: Entity): Vec2 => {
  if (mark.kind === 'arc') return mark.centre;
  if (mark.kind !== 'line') throw new Error(`a hole drawn as ${mark.kind}`);
  return [(mark.from[0] + mark.to[0]) / 2, (mark.from[1] + mark.to[1]) / 2];
};

/** The middle of a hole, or middle and both ends of a slit: slits match only if they lie the same way. */
const points = (mark: Entity): Vec2[] => (mark.kind === 'line' ? [centre(mark), mark.from, mark.to] : [centre(mark)]);

const pieceOf = (drawing: Drawing, id: PieceDrawing['id']): PieceDrawing | undefined =>
  drawing.pieces.find((piece) => piece.id === id);

/** Asks that each point has a fellow among the others within 1e-6 mm, far below any awl. */
function expectAmong(points: readonly Vec2[], others: readonly Vec2[]): void {
  const byX = [...others].sort((a, b) => a[0] - b[0]);
  for (const [x, y] of points) {
    let low = 0;
    for (let step = byX.length; step > 0; step = Math.floor(step / 2))
      while (low + step <= byX.length && nth(byX, low + step - 1)[0] < x - 1e-6) low += step;
    let isFound = false;
    for (let i = low; i < byX.length && nth(byX, i)[0] <= x + 1e-6; i++)
      isFound ||= Math.abs(nth(byX, i)[1] - y) < 1e-6;
    if (!isFound) expect.fail(`no hole at ${x}, ${y} in the other layer`);
  }
}

const toEdge = ([x, y]: Vec2, edge: readonly Vec2[]): number => {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < edge.length; i++) {
    const [a, b] = [nth(edge, i - 1), nth(edge, i)];
    const [u, v] = [b[0] - a[0], b[1] - a[1]];
    const share = Math.max(0, Math.min(1, ((x - a[0]) * u + (y - a[1]) * v) / (u * u + v * v || 1)));
    least = Math.min(least, Math.hypot(x - a[0] - share * u, y - a[1] - share * v));
  }
  return least;
};

/** The pocket's edge between its two right-hand corners. */
const mouthOf = ({ outline, width }: PieceDrawing) =>
  defined(
    outline.find((segment) => [segmentStart(segment), segmentEnd(segment)].every(([x]) => Math.abs(x - width) < 1e-6)),
  );

/** Where a chain that runs upward passes a height. */
function crossing(chain: readonly Vec2[], y: number): number {
  const i = chain.findIndex((point) => point[1] >= y);
  const [a, b] = [nth(chain, Math.max(0, i - 1)), nth(chain, i)];
  return a[1] === b[1] ? b[0] : a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]);
}

/** The holes of the seam as the outside shows them, without those of a strap and of the part that is folded in. */
const seamMarks = (design: CoverDesign, outside: PieceDrawing): readonly Entity[] =>
  outside.layers.hole.slice(0, holeCount(seamHoles(design)));

const pocketsMeet = (design: CoverDesign): boolean =>
  seamHoles(design).notes.some((note) => note.includes('meet or overlap'));

const rowsOf = (design: CoverDesign) => seamHoles(design).rows;

describe('over random jobs, the holes', () => {
  test('of each pocket are those of the outside over it, every one, in place and direction', () => {
    law((design, drawing) => {
      const pocket = pieceOf(drawing, 'pocket');
      if (pocket === undefined) return;
      const outside = defined(pieceOf(drawing, 'outside'));
      const own = pocket.layers.hole.flatMap(points);
      // The pocket lies under the front board: at the right of the outside, which is drawn grain side up.
      const turnedOver = (at: Vec2): Vec2 => [outside.width - at[0], at[1]];
      const seam = seamMarks(design, outside);
      expectAmong(own, seam.flatMap(points).map(turnedOver));
      const mouth = flattened([mouthOf(pocket)], 1e-4);
      const over = seam.filter((mark) => {
        const [x, y] = turnedOver(centre(mark));
        return x < crossing(mouth, y);
      });
      if (!pocketsMeet(design)) expect(pocket.layers.hole.length).toBe(over.length);
      // Turned half round it is the back pocket, at the left of the outside as drawn.
      expectAmong(
        own.map(([x, y]): Vec2 => [x, pocket.height - y]),
        seam.flatMap(points),
      );
    });
  });

  test('of the lining are those of the outside over it, every one', () => {
    law((design, drawing) => {
      const lining = pieceOf(drawing, 'lining');
      if (lining === undefined) return;
      const outside = defined(pieceOf(drawing, 'outside'));
      const shift = (design.pieces.outside.width - lining.width) / 2;
      const own = lining.layers.hole.flatMap(points).map(([x, y]): Vec2 => [outside.width - x - shift, y]);
      const seam = seamMarks(design, outside);
      expectAmong(own, seam.flatMap(points));
      if (pocketsMeet(design)) return;
      const over = seam.filter((mark) => Math.abs(centre(mark)[0] - outside.width / 2) < lining.width / 2);
      expect(lining.layers.hole.length).toBe(over.length);
    });
  });

  test('of a turned end meet those of the body when the end is folded in', () => {
    law((design, drawing) => {
      if (design.pieces.pocket.count > 0) return;
      const outside = defined(pieceOf(drawing, 'outside'));
      const fold = turnAxis(design);
      const end = outside.layers.hole.filter((mark) => centre(mark)[0] < fold);
      const folded = end.flatMap(points).map(([x, y]): Vec2 => [2 * fold - x, y]);
      expect(end.length).toBeGreaterThan(0);
      expectAmong(folded, outside.layers.hole.flatMap(points));
      const edge = flattened([mouthOf(outside)], 1e-4);
      const under = seamMarks(design, outside).filter((mark) => {
        const [x, y] = centre(mark);
        return x > fold && 2 * fold - x > outside.width - crossing(edge, y);
      });
      if (!pocketsMeet(design)) expect(end.length).toBe(under.length);
    });
  });

  test('stand at least the margin from every cut edge, and clear of every pocket mouth', () => {
    law((design, drawing) => {
      const { edgeMargin_mm: margin } = design.job.seam;
      const pitch = Math.min(...rowsOf(design).map((row) => row.pitch));
      for (const piece of drawing.pieces) {
        if (piece.id === 'strap' || piece.id === 'penLoop') continue;
        const mouths = piece.outline.filter((segment) => {
          const [from, to] = [segmentStart(segment), segmentEnd(segment)];
          const isUpright = Math.abs(from[0] - to[0]) < 1e-9 && Math.abs(from[1] - to[1]) > piece.height / 2;
          const isEnd = piece.id === 'pocket' ? from[0] > piece.width / 2 : true;
          const isStep =
            piece.id === 'pocket' ||
            (piece.id === 'outside' && design.pieces.pocket.count === 0) ||
            (piece.id === 'lining' &&
              (design.job.construction.lining === 'centre' || design.pieces.pocket.count === 0));
          return isStep && isUpright && isEnd;
        });
        const edges = piece.outline.filter((segment) => !mouths.includes(segment));
        const sides = edges.map((edge) => flattened([edge], 1e-3));
        const ends = mouths.map((mouth) => flattened([mouth], 1e-3));
        // A scooped mouth slants across the seam line by up to 53 degrees, which takes its share of the room.
        const share = mouths.some(({ kind }) => kind === 'arc') ? 0.3 * 0.6 : 0.3;
        const holes = piece.layers.hole.map(centre);
        const least = (chains: readonly (readonly Vec2[])[]): number =>
          Math.min(...holes.flatMap((hole) => chains.map((chain) => toEdge(hole, chain))));
        expect(least(sides)).toBeGreaterThan(margin - 2e-3);
        expect(least(ends)).toBeGreaterThan(share * pitch - 2e-3);
      }
    });
  });

  test('keep the pitch asked for within 5 %, but where a side is too short, which is said', () => {
    let short = 0;
    law((design) => {
      const seam = seamHoles(design);
      for (const { side, length, intervals, pitch, off, holes } of seam.rows) {
        expect(intervals * pitch).toBeCloseTo(length, 9);
        expect(holes.length).toBe(seam.isClosed ? intervals : intervals + 1);
        expect(pitch / design.job.seam.pitch_mm - 1).toBeCloseTo(off, 12);
        if (Math.abs(off) <= 0.05 + 1e-9) continue;
        short++;
        expect(length).toBeLessThan(10.5 * design.job.seam.pitch_mm);
        expect(seam.notes.join()).toContain(`${side === 'tail' ? 'Tail' : side === 'head' ? 'Head' : 'ore-edge'}`);
      }
    });
    console.info(`sides too short for their pitch: ${short}`);
  });

  test('of neighbours are one pitch apart along the seam line, so never farther apart than that', () => {
    law((design) => {
      const seam = seamHoles(design);
      for (const row of seam.rows) {
        const pairs = row.holes.slice(1).map((hole, i) => [nth(row.holes, i), hole] as const);
        const corner = design.job.seam.cornerRadius_mm;
        for (const [a, b] of pairs) {
          const chord = Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);
          const isStraight = [a, b].every((hole) => farFromCorner(design, hole, corner));
          if (chord > row.pitch + 1e-9 || (isStraight && chord < row.pitch - 1e-9))
            expect.fail(`neighbours ${chord} mm apart at a pitch of ${row.pitch}`);
        }
      }
    });
  });

  test('have one at the middle of each corner, on its diagonal', () => {
    law((design) => {
      const seam = seamHoles(design);
      const corners = seam.rows.flatMap(({ holes }) => holes).filter(({ isCorner }) => isCorner);
      expect(corners.length).toBe(seam.isClosed ? 4 : 0);
      const { width, height } = design.pieces.outside;
      for (const { at } of corners) {
        const [x, y] = [Math.min(at[0], width - at[0]), Math.min(at[1], height - at[1])];
        expect(x).toBeCloseTo(y, 9);
        if (design.job.construction.corners === 'square') expect(x).toBeCloseTo(design.job.seam.edgeMargin_mm, 9);
      }
    });
  });

  test('start and finish beside each other inside the back pocket, or at the two folds of turned ends', () => {
    law((design) => {
      const { starts, finishes, isClosed, notes } = seamHoles(design);
      expect(starts.length).toBe(isClosed ? 1 : 2);
      expect(finishes.length).toBe(starts.length);
      if (isClosed && !notes.some((note) => note.includes('meet')))
        for (const hole of [...starts, ...finishes]) expect(hole.layers).toContain('backPocket');
    });
  });
});

function farFromCorner(design: CoverDesign, { at }: SeamHole, corner: number): boolean {
  const { width, height } = design.pieces.outside;
  const reach = corner + design.job.seam.edgeMargin_mm;
  return Math.min(at[0], width - at[0]) > reach || Math.min(at[1], height - at[1]) > reach;
}

const isTrimmed = (design: CoverDesign): boolean =>
  seamHoles(design).notes.some((note) => note.includes('trim that layer'));

test('no layer has to be trimmed clear of a hole where the tool decides the depth of the pockets', () => {
  let meets = 0;
  law((design) => {
    if (pocketsMeet(design)) meets++;
    else expect(isTrimmed(design)).toBe(false);
  });
  console.info(`pockets that meet: ${meets} of ${lawCases()}`);
  expect(meets).toBeLessThan(0.05 * lawCases());
});

test('with a depth given, a hole too near a mouth is left out of that layer and said so; never of the lining', () => {
  let trimmed = 0;
  checkLaw(
    fc.property(constructedJob, fc.double({ min: 20, max: 60, noNaN: true }), (document, depth_mm) => {
      const given = { ...document, pockets: { ...document.pockets, depth_mm } };
      const design = coverDesign(soundJob(given));
      expect(design.pieces.pocketDepth).toBe(depth_mm);
      if (!isTrimmed(design)) return;
      trimmed++;
      expect(seamHoles(design).notes.join()).not.toContain('end of the lining');
    }),
  );
  console.info(`of ${lawCases()} jobs with a depth given: ${trimmed} with a mouth near a hole`);
  expect(trimmed).toBeLessThan(0.2 * lawCases());
});
