import { THREAD_STANDS } from '../../pattern/seamRise.ts';
import type { SeamKnot } from './seamKnot.ts';
import type { SeamWork } from './seamWork.ts';
import { rowStack, type StationRow } from './station.ts';

/** Slant of a saddle stitch on the face, radians: both strands share a hole, one above the other. Judged by eye. */
const SLANT = 0.17;

/**
 * Saddle stitch along a row: two strands, one on either face in every stitch, which change faces in every hole on its axis.
 * The first stitches and the last are sewn twice: start and finish have a way back of as many stitches.
 * @returns the knots of both strands
 */
export function stitchRow(row: StationRow, { section, backStitches }: SeamWork, firstMove: number): SeamKnot[][] {
  const last = row.isClosed ? row.stations.length : row.stations.length - 1;
  const back = Math.min(backStitches, last);
  const holes = [
    ...Array.from({ length: back }, (_, i) => back - i),
    ...Array.from({ length: last + 1 }, (_, i) => i),
    ...Array.from({ length: back }, (_, i) => last - 1 - i),
  ];
  const thickness = section.thickness;
  const stands = THREAD_STANDS * thickness;
  // Pulled tight, a thread bends round its own inner side.
  const bend = thickness / 2;
  const slant = (row.pitch / 2 - bend) * Math.tan(SLANT);
  return ([1, -1] as const).map((start) => {
    const knots: SeamKnot[] = [hole(row, nth(holes, 0), 1, firstMove)];
    for (let i = 1; i < holes.length; i++) {
      const [from, to] = [nth(holes, i - 1), nth(holes, i)];
      const side = i % 2 === 0 ? -start : start;
      const way = to - from;
      // A stitch over another one lies beside it.
      const isSecond = i > back && (i <= 2 * back || i > back + last);
      const beside = isSecond ? 0.8 * thickness : 0;
      const put = (along: number, height: number, z: number): void => {
        const u = from + way * along;
        knots.push({
          u,
          y: side > 0 ? height : -rowStack(row, u) - height,
          z: way * z * slant + Math.abs(z) * beside,
          turn: side > 0 ? 0 : Math.PI,
          twist: 0,
          move: firstMove + i,
          isInside: false,
          pass: null,
        });
      };
      put(0, stands - bend, 0);
      put((0.3 * bend) / row.pitch, stands - 0.3 * bend, 0.3);
      put(bend / row.pitch, stands, 1);
      put(0.5, stands, 0);
      put(1 - bend / row.pitch, stands, -1);
      put(1 - (0.3 * bend) / row.pitch, stands - 0.3 * bend, -0.3);
      put(1, stands - bend, 0);
      knots.push(hole(row, to, way, firstMove + i));
    }
    return knots;
  });
}

const nth = (list: readonly number[], i: number): number => list[i]!;

/** A knot on the axis of a hole, in the middle of the layers. */
function hole(row: StationRow, at: number, way: number, move: number): SeamKnot {
  const station = at % row.stations.length;
  return {
    u: at,
    y: -row.stations[station]!.stack / 2,
    z: 0,
    turn: Math.PI / 2,
    twist: (way * Math.PI) / 2,
    move,
    isInside: true,
    pass: station,
  };
}
