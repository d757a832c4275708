import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useEffect } from 'react';
import { type Camera, type Matrix4, Vector3 } from 'three';
import type { FitMark, Vec3 } from '../../../core/index.ts';
import { type DimensionLine, dimensionLine } from './dimensionLine.ts';
import { type Pixel, placeLabels } from './placeLabels.ts';

const LABEL_HEIGHT = 22;
const LABEL_PADDING = 7;
/** From the dimension line to its label, px: past the tails of the arrows. */
const LABEL_CLEARANCE = 30;

interface FitMarkProjectorProps {
  readonly svg: RefObject<SVGSVGElement | null>;
  readonly marks: readonly FitMark[];
  readonly matrix: Matrix4;
  /** Whether the inside of the cover shows, by opening or by a cut: marks that face away are then shown too. */
  readonly seenInto: boolean;
}

/** Moves the marks of the overlay to their places in the picture, every frame. */
export function FitMarkProjector({ svg, marks, matrix, seenInto }: FitMarkProjectorProps) {
  const invalidate = useThree((state) => state.invalidate);
  // biome-ignore lint/correctness/useExhaustiveDependencies: new marks want a new frame
  useEffect(() => invalidate(), [marks, invalidate]);

  useFrame(({ camera, size }) => {
    const groups = [...(svg.current?.querySelectorAll('g') ?? [])];
    const project = projector(camera, size, matrix);
    const centre: Pixel = [size.width / 2, size.height / 2];
    const shown = shownMarks(marks, (mark) => isFar(mark, camera, matrix), seenInto);
    const drawn = marks.flatMap((mark, i) => {
      const group = groups[i];
      if (!group) return [];
      const line = projectedDimension(mark, project);
      const inside = shown.has(mark) && inPicture(line.middle, size);
      group.style.display = inside ? '' : 'none';
      if (!inside) return [];
      const text = group.querySelector('text')!;
      return [
        { group, line, lean: leanOf(mark, project), text, width: text.getComputedTextLength() + 2 * LABEL_PADDING },
      ];
    });
    const centres = placeLabels(
      drawn.map(({ line, lean, width }) => ({
        at: labelCentre(line, lean, width, centre),
        width,
        height: LABEL_HEIGHT,
      })),
      size,
      drawn.map(({ line }) => ({ at: line.middle, width: 40, height: 14 })),
    );
    for (const [i, { group, line, text, width }] of drawn.entries()) {
      const [x, y] = centres[i]!;
      const [leader, casing, extension, dimension, arrows, rect] = group.children as unknown as SVGElement[];
      set(leader!, { d: leaderPath(line.middle, [x, y], width) });
      set(casing!, { d: line.extension + line.dimension + line.arrows });
      set(extension!, { d: line.extension });
      set(dimension!, { d: line.dimension });
      set(arrows!, { d: line.arrows });
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

/** Whether a mark faces away from the camera. */
function isFar({ from, out }: FitMark, camera: Camera, matrix: Matrix4): boolean {
  const foot = vector(from).applyMatrix4(matrix);
  return vector(out).transformDirection(matrix).dot(camera.position.clone().sub(foot)) < 0;
}

/** The marks to show: for each edge the first that faces the camera, or else the first, if the inside shows. */
function shownMarks(marks: readonly FitMark[], far: (mark: FitMark) => boolean, seenInto: boolean): Set<FitMark> {
  const shown = new Map<FitMark['edge'], FitMark>();
  for (const isFirstChoice of [true, false])
    for (const mark of marks)
      if (!shown.has(mark.edge) && (isFirstChoice ? !far(mark) : seenInto)) shown.set(mark.edge, mark);
  return new Set(shown.values());
}

const inPicture = ([x, y]: Pixel, { width, height }: { width: number; height: number }): boolean =>
  x >= 0 && y >= 0 && x <= width && y <= height;

type Project = (point: Vector3) => Pixel;

function projector(camera: Camera, size: { width: number; height: number }, matrix: Matrix4): Project {
  return (point) => {
    const { x, y } = point.clone().applyMatrix4(matrix).project(camera);
    return [((x + 1) / 2) * size.width, ((1 - y) / 2) * size.height];
  };
}

const vector = (v: Vec3): Vector3 => new Vector3(...v);

/** The mark's dimension line; its ticks run along the hatched strip, or out of the surface where there is none. */
function projectedDimension({ from, to, out, hatch }: FitMark, project: Project): DimensionLine {
  const [start, end] = [project(vector(from)), project(vector(to))];
  const [first, last] = [hatch[0]?.[0], hatch.at(-1)?.[0]];
  const edge = first && last ? vector(last).sub(vector(first)).normalize() : vector(out);
  return dimensionLine(start, end, step(from, edge, project));
}

/** Image of a direction at a place, px per mm. */
function step(place: Vec3, direction: Vector3, project: Project): Pixel {
  const [from, to] = [project(vector(place)), project(vector(place).add(direction))];
  return [to[0] - from[0], to[1] - from[1]];
}

const leanOf = ({ from, out }: FitMark, project: Project): Pixel => unit(step(from, vector(out), project));

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
