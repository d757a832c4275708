import { type PlaceCovariance, subtract, type Vec2 } from '../core/index.ts';
import { type FaceLines, meetings, SPINE } from './faceLines.ts';
import { movedSide, outward, type Seer } from './faceSides.ts';
import type { Shows } from './shows.ts';

/** A corner of the face in one photograph. */
export interface ProposedCorner {
  readonly at: Vec2;
  /** Large across a side that this photograph does not show. */
  readonly u: PlaceCovariance;
}

/** Standard uncertainty of a side that a photograph does not show, mm. */
const UNSEEN = 10;
/** How far one photograph's line beside a rounded spine may lie from that of all, mm. */
const AGREES = 0.3;
/** What no scatter along a side shows: threads, wear and rounded edges, mm; and where only photographs from without show it. Assumptions of this project, no source. */
const EDGE_U = { within: 0.1, without: 0.4 } as const;

/**
 * Corners as one photograph has them by its own sides. What it sees from without is no side to it, for the lower edge of a thin board is too
 * near; a side that no photograph sees from within counts a little. Of a corner with one side it tells the place across that side alone.
 */
export function cornersIn(
  { shows }: Seer,
  { sought, lines }: FaceLines,
  photograph: number,
  isRounded: boolean,
): ProposedCorner[] {
  const own = lines.map(({ seen, isWithin, at, tilt }, k) => {
    const line = seen[photograph] ?? null;
    const hasWithin = isWithin.some((within, i) => within && seen[i] !== null);
    // Beside a rounded spine the photographs from without are as good, and those from within may see the spine's own outline.
    const isGood =
      isRounded && k === SPINE
        ? line !== null && Math.hypot(line.at - at, line.tilt - tilt) < AGREES
        : isWithin[photograph] || !hasWithin;
    if (line === null || !isGood) return { at, tilt, u: UNSEEN };
    return {
      ...line,
      u: Math.hypot(line.uAt, line.uTilt, isWithin[photograph] || hasWithin ? EDGE_U.within : EDGE_U.without),
    };
  });
  const sides = sought.map((side, k) => movedSide(side, own[k]!));
  return meetings(sides).map((place, k) => {
    const z = sought[k]!.heights[0];
    const [a, b] = [(k + 3) % 4, k].map((i) => ({ out: outward(sides[i]!), u: own[i]!.u }));
    return { at: pixelAt(shows, place, z), u: covarianceAt(shows, place, z, [a!, b!]) };
  });
}

function pixelAt(shows: Shows, [x, y]: Vec2, z: number): Vec2 {
  const pixel = new Float64Array(2);
  shows(x, y, z, pixel);
  return [pixel[0]!, pixel[1]!];
}

/** Covariance in the photograph of a place whose distances across two directions are known with these uncertainties, mm. */
function covarianceAt(
  shows: Shows,
  place: Vec2,
  z: number,
  known: readonly { readonly out: Vec2; readonly u: number }[],
): PlaceCovariance {
  let [xx, xy, yy] = [0, 0, 0];
  for (const {
    out: [p, q],
    u,
  } of known) {
    xx += (p * p) / u ** 2;
    xy += (p * q) / u ** 2;
    yy += (q * q) / u ** 2;
  }
  const whole = xx * yy - xy * xy;
  const [cxx, cxy, cyy] = [yy / whole, -xy / whole, xx / whole];
  const at = pixelAt(shows, place, z);
  const [a, c] = subtract(pixelAt(shows, [place[0] + 1, place[1]], z), at);
  const [b, d] = subtract(pixelAt(shows, [place[0], place[1] + 1], z), at);
  return [
    a * a * cxx + 2 * a * b * cxy + b * b * cyy,
    a * c * cxx + (a * d + b * c) * cxy + b * d * cyy,
    c * c * cxx + 2 * c * d * cxy + d * d * cyy,
  ];
}
