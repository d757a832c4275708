import {
  addScaled,
  capital,
  extent,
  type Hide,
  heading,
  type Layout,
  type LeatherName,
  type LengthUnit,
  polygonArea,
  printer,
  type Text,
  textWidth,
  type Vec2,
} from '../../core/index.ts';

/** Leather with pieces laid on it, as every file of a layout shows it; coordinates are those of the hide, mm. */
export interface LayoutSheet {
  readonly title: string;
  readonly units: LengthUnit;
  readonly outline: readonly Vec2[];
  readonly defects: readonly (readonly Vec2[])[];
  readonly pieces: readonly LaidPiece[];
  /** Middles of the crosses that place the sheet again after the leather was turned over. */
  readonly crosses: readonly Vec2[];
  /** What is laid on what, in sentences. */
  readonly words: readonly string[];
}

export interface LaidPiece {
  readonly name: string;
  readonly polygon: readonly Vec2[];
  /** From tail to head: two ends, the second with the barbs. */
  readonly arrow: readonly [Vec2, Vec2];
  /** Where its name stands: the middle of its line, the direction that it runs in, and the room along and across. */
  readonly label: { readonly at: Vec2; readonly angle: number; readonly along: number; readonly across: number };
}

export interface LayoutSource {
  /** Of the job. */
  readonly name: string;
  readonly leather: LeatherName;
  readonly units: LengthUnit;
  readonly hide: Hide;
  readonly layout: Layout;
  /** Whether the leather is not the maker's own yet, but assumed. */
  readonly isAssumed?: boolean;
  /** Seen from the grain side: the hide is outlined from the flesh side. */
  readonly isMirrored?: boolean;
}

/** Crosses stand so far outside the corners of the box round the leather, mm: off the leather, on what it is laid on. */
const OUTSIDE = 15;

/** Half the length of the arms of a cross, mm. */
const ARM = 5;

/**
 * What the files of a layout show: outline, defects, each piece with its name and its direction, and four crosses at the corners
 * of a box round the leather. The box is the same for both sides, so the crosses of the mirrored file fall on those of the plain one.
 */
export function layoutSheet(source: LayoutSource): LayoutSheet {
  const { name, leather, units, hide, layout, isAssumed = false, isMirrored = false } = source;
  const { x, y } = boxOf(hide.outline);
  const seen = ([px, py]: Vec2): Vec2 => (isMirrored ? [x[0] + x[1] - px, py] : [px, py]);
  const turn = (angle: number): number => (isMirrored ? Math.PI - angle : angle);
  const say = printer(units);
  const { placed, unplaced } = layout;
  const laid = `${say.area(polygonArea(hide.outline))} in all; ${say.area(layout.area)} of pieces, yield ${say.share(layout.yield)}.`;
  return {
    title: `${name.trim() === '' ? 'Cover without a name' : name}: ${leather} leather laid out`,
    units,
    outline: hide.outline.map(seen),
    defects: hide.defects.map((defect) => defect.map(seen)),
    pieces: placed.map((piece) =>
      laidPiece(piece.name, piece.polygon.map(seen), turn(hide.backbone + (piece.quarters * Math.PI) / 2)),
    ),
    crosses: [x[0] - OUTSIDE, x[1] + OUTSIDE].flatMap((cx) =>
      [y[0] - OUTSIDE, y[1] + OUTSIDE].map((cy): Vec2 => [cx, cy]),
    ),
    words: [
      `${capital(leather)} leather${isAssumed ? ', assumed' : ''}: ${laid}`,
      `Seen from the ${isMirrored ? 'grain' : 'flesh'} side. Arrows: from tail to head. The backbone runs at ${say.degrees((turn(hide.backbone) * 180) / Math.PI, 'nearest')}: 90° is upright, 0° across.`,
      ...(unplaced.length > 0 ? [`Not laid: ${unplaced.join(', ')}.`] : []),
    ],
  };
}

/** The box round points, and round the crosses of a sheet with their arms. */
export function boxOf(points: readonly Vec2[]) {
  const ends = (axis: 0 | 1): readonly [number, number] => {
    const all = points.map((point) => point[axis]);
    return [Math.min(...all), Math.max(...all)];
  };
  return { x: ends(0), y: ends(1) };
}

/** Everything that a sheet shows lies in this box, mm. */
export function sheetBox({ crosses }: Pick<LayoutSheet, 'crosses'>) {
  const { x, y } = boxOf(crosses);
  return { x: [x[0] - ARM, x[1] + ARM], y: [y[0] - ARM, y[1] + ARM] } as const;
}

/** The two lines of a cross, with arms of a length, mm. */
export const crossLines = ([x, y]: Vec2, arm: number = ARM): readonly (readonly [Vec2, Vec2])[] => [
  [
    [x - arm, y],
    [x + arm, y],
  ],
  [
    [x, y - arm],
    [x, y + arm],
  ],
];

/** The lines of an arrow: its shaft and both barbs. */
export function arrowLines([from, to]: readonly [Vec2, Vec2]): readonly (readonly [Vec2, Vec2])[] {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const barb = Math.min(8, Math.hypot(to[0] - from[0], to[1] - from[1]) / 3);
  const barbs = [-1, 1].map((side): [Vec2, Vec2] => [
    to,
    addScaled(to, heading(angle + Math.PI + (side * Math.PI) / 6), barb),
  ]);
  return [[from, to], ...barbs];
}

/** @param head direction from its tail to its head, radians */
function laidPiece(name: string, polygon: readonly Vec2[], head: number): LaidPiece {
  // In the piece's own frame its head is up.
  const [right, up] = [heading(head - Math.PI / 2), heading(head)];
  const own = polygon.map(([x, y]): Vec2 => [x * right[0] + y * right[1], x * up[0] + y * up[1]]);
  const { x, y } = boxOf(own);
  const [wide, high] = [extent(own, 0), extent(own, 1)];
  const place = (across: number, along: number): Vec2 => {
    const [u, v] = [x[0] + across * wide, y[0] + along * high];
    return [u * right[0] + v * up[0], u * right[1] + v * up[1]];
  };
  // The name runs across the piece under the arrow; in a narrow piece along it.
  const isNarrow = high > 2 * wide;
  const angle = upright(isNarrow ? head : head - Math.PI / 2);
  return {
    name,
    polygon,
    arrow: [place(0.5, 0.62), place(0.5, 0.92)],
    label: {
      at: place(0.5, 0.3),
      angle,
      along: 0.85 * (isNarrow ? 0.5 * high : wide),
      across: 0.6 * (isNarrow ? wide : 0.4 * high),
    },
  };
}

/** The direction that words run in so that they are not upside down. */
function upright(angle: number): number {
  const turned = Math.atan2(Math.sin(angle), Math.cos(angle));
  return Math.abs(turned) > Math.PI / 2 + 1e-9 ? turned - Math.sign(turned) * Math.PI : turned;
}

/** The name of a piece, as large as it has room for, up to a height, mm. */
export function nameText({ name, label }: LaidPiece, most: number): Text {
  const height = Math.min(most, label.across, label.along / textWidth(name, 1));
  // The middle of the letters is about a third of their height over the base line.
  const at = addScaled(label.at, heading(label.angle - Math.PI / 2), 0.35 * height);
  return { kind: 'text', at, height, rotation: label.angle, align: 'middle', text: name };
}
