import type { HalfSection, SectionPoint } from '../../fold/section/halfSection.ts';
import { placeSection, type SectionPosture, sectionStops } from '../../fold/section/halfSection.ts';
import { addScaled, dot, leftOf, subtract, type Vec2 } from '../../math/vec2.ts';
import type { CoverGrid } from '../coverGrid.ts';

/** A place on the cover's section at mid-height, front cut edge to back cut edge. */
export interface SectionPlace {
  /** Distance from the front cut edge on the pattern, mm. */
  readonly s: number;
  readonly grain: Vec2;
  /** The face that board and pocket see. */
  readonly inner: Vec2;
  /** Unit vector out of the grain side. */
  readonly out: Vec2;
  /** Share of a turned end's upright below this place: 0 outside the ends, 1 on the pocket. */
  readonly lift: number;
}

export type SectionLine = readonly SectionPlace[];

/**
 * Section of the cover as it is laid, at what stands out farthest between two heights on the pattern, mm: a turned end bulges
 * toward head and tail.
 */
export function lineOfGrid(grid: CoverGrid, [low, high]: readonly [number, number]): SectionLine {
  const { columns, s, front, grain, uvs } = grid;
  const { rows } = grain;
  return columns.map((column, i) => {
    const place = placed(column, s[i]!, s[i]! < front.length ? -1 : 1);
    const along = alongLine(place);
    let [rise, aside] = [0, 0];
    for (let j = 0; j < rows; j++) {
      const k = i * rows + j;
      const [before, after] = [uvs[2 * (j > 0 ? k - 1 : k) + 1]!, uvs[2 * (j + 1 < rows ? k + 1 : k) + 1]!];
      if (after < low || before > high) continue;
      const from = subtract([grain.points[3 * k]!, grain.points[3 * k + 1]!], place.grain);
      rise = Math.max(rise, dot(from, place.out));
      const way = dot(from, along);
      if (Math.abs(way) > Math.abs(aside)) aside = way;
    }
    return { ...place, grain: addScaled(addScaled(place.grain, place.out, rise), along, aside) };
  });
}

/** Section of two halves lying on their book. */
export function lineOfHalves(front: HalfSection, back: HalfSection): SectionLine {
  const posture: SectionPosture = { wrapped: 1, turnedFolds: [Math.PI / 2, Math.PI / 2] };
  const half = (section: HalfSection, side: 1 | -1): SectionPlace[] =>
    placeSection(
      section,
      [...sectionStops(section)].sort((a, b) => a - b),
      posture,
    ).map((point) => placed(point, front.length + side * point.d, side));
  return [...half(front, -1).slice(1).reverse(), ...half(back, 1)];
}

/** A section point is in the plane of the back half; the front half is its mirror image. */
function placed({ inner, theta, lining, outside, lift }: SectionPoint, s: number, side: 1 | -1): SectionPlace {
  const out: Vec2 = [Math.sin(theta), -side * Math.cos(theta)];
  const face: Vec2 = [inner[0], side * inner[1]];
  return { s, inner: face, grain: addScaled(face, out, lining + outside), out, lift };
}

/** The place at a distance from the front cut edge. */
export function lineAt(line: SectionLine, s: number): SectionPlace {
  const next = line.findIndex((place) => place.s >= s);
  if (next === -1) return line[line.length - 1]!;
  if (next === 0) return line[0]!;
  const [a, b] = [line[next - 1]!, line[next]!];
  const share = b.s > a.s ? (s - a.s) / (b.s - a.s) : 0;
  const mixed = (p: Vec2, q: Vec2): Vec2 => [p[0] + (q[0] - p[0]) * share, p[1] + (q[1] - p[1]) * share];
  const out = mixed(a.out, b.out);
  const size = Math.hypot(...out);
  return {
    s,
    grain: mixed(a.grain, b.grain),
    inner: mixed(a.inner, b.inner),
    out: [out[0] / size, out[1] / size],
    lift: a.lift + (b.lift - a.lift) * share,
  };
}

/** From the front fore-edge toward the spine along the cover, or from the spine toward the back one: out is on the right. */
export const alongLine = ({ out }: SectionPlace): Vec2 => leftOf(out);
