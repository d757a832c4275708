import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useEffect } from 'react';
import type { Matrix4, PerspectiveCamera, Vector3 } from 'three';
import type { FitMark } from '../../../core/index.ts';
import type { IsHidden } from '../geometry/occlusion.ts';
import type { Insets } from '../insets.ts';
import type { AreaLabel } from './areaLabels.ts';
import { type DimensionLine, dimensionLine } from './dimensionLine.ts';
import { type Pixel, placeLabels } from './placeLabels.ts';
import { type View, vector, viewOf } from './view.ts';

const LABEL_HEIGHT = 22;
const LABEL_PADDING = 7;
/** From the dimension line to its label, px: past its tails. */
const LABEL_CLEARANCE = 30;

interface FitMarkProjectorProps {
  readonly svg: RefObject<SVGSVGElement | null>;
  readonly marks: readonly FitMark[];
  readonly areas: readonly AreaLabel[];
  readonly matrix: Matrix4;
  readonly isHidden: IsHidden;
  readonly insets: Insets;
}

/** Moves the marks of the overlay to their places in the picture, every frame. */
export function FitMarkProjector({ svg, marks, areas, matrix, isHidden, insets }: FitMarkProjectorProps) {
  const invalidate = useThree((state) => state.invalidate);
  // biome-ignore lint/correctness/useExhaustiveDependencies: new marks want a new frame
  useEffect(() => invalidate(), [marks, areas, insets, invalidate]);

  useFrame(({ camera, size }) => {
    const groups = [...(svg.current?.querySelectorAll('g') ?? [])];
    const view = viewOf(camera as PerspectiveCamera, size, matrix);
    const frame = {
      left: insets.left,
      top: insets.top,
      right: size.width - insets.right,
      bottom: size.height - insets.bottom,
    };
    const centre: Pixel = [(frame.left + frame.right) / 2, (frame.top + frame.bottom) / 2];
    const shown = shownMarks(marks, view, isHidden);
    const wanted = [
      ...marks.map((mark) => ({ mark, line: projectedDimension(mark, view), isShown: shown.has(mark) })),
      ...areas.map((mark) => ({ mark, line: pointOf(mark, view), isShown: isSeen(mark, view, isHidden) })),
    ];
    const inView = wanted.flatMap(({ mark, line, isShown }, i) => {
      const group = groups[i];
      if (!group) return [];
      const inside = isShown && inPicture(line.middle, size);
      group.style.display = inside ? '' : 'none';
      if (!inside) return [];
      const text = group.querySelector('text')!;
      const width = text.getComputedTextLength() + 2 * LABEL_PADDING;
      return [{ group, line, lean: leanOf(mark, view), text, width, urgency: urgencyOf(mark) }];
    });
    const drawn = inView.sort((a, b) => a.urgency.rank - b.urgency.rank || a.urgency.value - b.urgency.value);
    const centres = placeLabels(
      drawn.map(({ line, lean, width }) => ({
        at: labelCentre(line, lean, width, centre),
        width,
        height: LABEL_HEIGHT,
      })),
      frame,
      drawn.map(({ line }) => ({ at: line.middle, width: 40, height: 14 })),
    );
    for (const [i, { group, line, text, width }] of drawn.entries()) {
      const [leader, casing, dimension, rect] = group.children as unknown as SVGElement[];
      const drawing = { d: line.line + line.ticks + line.heads };
      set(casing!, drawing);
      set(dimension!, drawing);
      const centre = centres[i] ?? null;
      // A text that is not displayed has no length to measure.
      for (const part of [leader!, rect!, text]) part.style.visibility = centre === null ? 'hidden' : '';
      if (centre === null) continue;
      const [x, y] = centre;
      set(leader!, { d: leaderPath(line.middle, [x, y], width) });
      set(rect!, { x: x - width / 2, y: y - LABEL_HEIGHT / 2, width, height: LABEL_HEIGHT });
      set(text, { x, y });
    }
  });
  return null;
}

function set(element: SVGElement, attributes: Record<string, string | number>): void {
  for (const [name, value] of Object.entries(attributes)) {
    element.setAttribute(name, typeof value === 'number' ? value.toFixed(1) : value);
  }
}

/** The marks to show: for each edge one that is not hidden, rather from the front than from behind. */
function shownMarks(marks: readonly FitMark[], { eye }: View, isHidden: IsHidden): Set<FitMark> {
  const isFar = ({ from, out }: FitMark): boolean => vector(out).dot(eye.clone().sub(vector(from))) < 0;
  const shown = new Map<FitMark['edge'], FitMark>();
  for (const mark of [...marks.filter((mark) => !isFar(mark)), ...marks.filter(isFar)]) {
    const middle = vector(mark.from).lerp(vector(mark.to), 0.5);
    if (!shown.has(mark.edge) && !isHidden(middle, vector(mark.out), eye)) shown.set(mark.edge, mark);
  }
  return new Set(shown.values());
}

const inPicture = ([x, y]: Pixel, { width, height }: { width: number; height: number }): boolean =>
  x >= 0 && y >= 0 && x <= width && y <= height;

/** The mark's dimension line; its ticks run along the edge, or out of the surface where it measures none. */
function projectedDimension({ from, to, out, band }: FitMark, view: View): DimensionLine {
  const [start, end] = [vector(from), vector(to)];
  const corner = (rung: number, point: number): Vector3 => vector(band!.rungs.at(rung)!.at(point)!);
  const along = band ? corner(-1, 0).sub(corner(0, 0)).normalize() : vector(out);
  const across = band ? corner(0, 1).sub(corner(0, 0)) : end.clone().sub(start);
  return dimensionLine(start, end, { along, across: across.normalize() }, view);
}

/** An area has no dimension line: its label points at its middle. */
const pointOf = ({ at }: AreaLabel, { pixel }: View): DimensionLine => ({
  line: '',
  ticks: '',
  heads: '',
  middle: pixel(vector(at)),
});

/** Whether the side of the leather that an area is on faces the eye, and nothing stands before it. */
function isSeen({ at, out }: AreaLabel, { eye }: View, isHidden: IsHidden): boolean {
  const [place, normal] = [vector(at), vector(out)];
  return normal.dot(eye.clone().sub(place)) > 0 && !isHidden(place, normal, eye);
}

/**
 * Which label comes first where not all have room: what does not fit, what is too loose, areas, which are only there when asked
 * for, gaps at the edges, the rest; of one kind the least value.
 */
function urgencyOf(mark: FitMark | AreaLabel): { readonly rank: number; readonly value: number } {
  if ('words' in mark) return { rank: 2, value: 0 };
  const { edge, value, isLoose, band } = mark;
  if (edge === 'gape' || value < 0) return { rank: 0, value };
  if (isLoose) return { rank: 1, value: -value };
  return { rank: band === null ? 4 : 3, value };
}

function leanOf(mark: FitMark | AreaLabel, { pixel }: View): Pixel {
  const at = vector('at' in mark ? mark.at : mark.from);
  const [start, end] = [pixel(at), pixel(at.clone().add(vector(mark.out)))];
  return unit([end[0] - start[0], end[1] - start[1]]);
}

/** Centre for a label: beyond the dimension line along its surface normal, a little away from the picture's middle. */
function labelCentre({ middle }: DimensionLine, lean: Pixel, width: number, centre: Pixel): Pixel {
  const outward = unit([middle[0] - centre[0], middle[1] - centre[1]]);
  const [x, y] = unit([lean[0] + 0.6 * outward[0], lean[1] + 0.6 * outward[1]]);
  const clear =
    LABEL_CLEARANCE + Math.min(width / 2 / Math.max(1e-6, Math.abs(x)), LABEL_HEIGHT / 2 / Math.max(1e-6, Math.abs(y)));
  return [middle[0] + x * clear, middle[1] + y * clear];
}

function unit([x, y]: Pixel): Pixel {
  const length = Math.hypot(x, y);
  return length > 1e-6 ? [x / length, y / length] : [0, 0];
}

/** From the dimension line to the nearest place on the label's border. */
function leaderPath(from: Pixel, label: Pixel, width: number): string {
  const x = Math.max(label[0] - width / 2, Math.min(label[0] + width / 2, from[0]));
  const y = Math.max(label[1] - LABEL_HEIGHT / 2, Math.min(label[1] + LABEL_HEIGHT / 2, from[1]));
  return `M${from[0].toFixed(1)} ${from[1].toFixed(1)}L${x.toFixed(1)} ${y.toFixed(1)}`;
}
