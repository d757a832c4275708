import { Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { bandCut } from '../../../src/app/scene/geometry/bandCut.ts';
import { slicePlane } from '../../../src/app/scene/geometry/slicePlane.ts';
import type { Slice } from '../../../src/app/scene/slice.ts';
import { coverDesign, EXAMPLE_JOBS, foldedCover } from '../../../src/core/index.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { soundJob } from '../../jobArbitrary.ts';

/** What is drawn beyond edge and stop, mm. */
const ROOM = 1;
const CASES = (['acrossSpine', 'throughPocket'] as const).flatMap((axis) =>
  EXAMPLE_JOBS.flatMap(({ document }) => {
    const job = soundJob(document);
    const tooNarrow = { ...job, pattern: { ...job.pattern, outsideWidth_mm: mm(2 * job.book.width_mm) } };
    return [
      { title: `${job.name}, ${axis}`, axis, job, boards: 2 },
      // It is stuck half open: the slice through the pocket meets the raised board at a slant.
      { title: `${job.name} in a cover too narrow, ${axis}`, axis, job: tooNarrow, boards: 0 },
    ];
  }),
);

describe.each(CASES)('the gap on a cut face, $title', ({ axis, job, boards }) => {
  const cover = foldedCover(coverDesign(job), { kind: 'opening', angle: 0 });
  const cutAt = (at: number) => {
    const slice: Slice = { axis, at };
    const { assembly } = slicePlane(cover, slice);
    return cover.marks.flatMap((mark) => {
      const cut = mark.band && bandCut(mark, mark.band, assembly);
      return cut ? [{ mark, cut, assembly }] : [];
    });
  };

  test('shows at the edges that the slice crosses', () => {
    const edges = cutAt(0.7).map(({ mark }) => mark.edge);
    expect(edges).toEqual(
      axis === 'acrossSpine' ? ['frontForeEdge', 'backForeEdge'] : Array(boards).fill(['head', 'tail']).flat(),
    );
  });

  test('is as long as the gap and as deep as the board, in the plane', () => {
    for (const { mark, cut, assembly } of [0.2, 0.5, 0.7].flatMap(cutAt)) {
      const [a, b, c, d] = cut.corners.map((corner) => new Vector3(...corner)) as [Vector3, Vector3, Vector3, Vector3];
      expect(a.distanceTo(b)).toBeCloseTo(Math.abs(mark.value) + 2 * ROOM, 6);
      expect(d.distanceTo(c)).toBeCloseTo(Math.abs(mark.value) + 2 * ROOM, 6);
      expect(a.distanceTo(d)).toBeCloseTo(mark.band!.board, 6);
      // Not clipped, and too near to be seen apart.
      for (const corner of [a, b, c, d]) {
        expect(assembly.distanceToPoint(corner)).toBeGreaterThan(0.001);
        expect(assembly.distanceToPoint(corner)).toBeLessThan(0.02);
      }
    }
  });
});
