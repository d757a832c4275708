import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useEffect } from 'react';
import { type Camera, type Matrix4, Vector3 } from 'three';
import type { FitMark } from '../../../core/fold/mesh/meshData.ts';
import type { Vec3 } from '../../../core/fold/mesh/vec3.ts';
import { type DimensionLine, dimensionLine } from './dimensionLine.ts';
import { type Pixel, placeLabels } from './placeLabels.ts';

/** How far a dimension line stands off, px, and at most, mm. */
const STAND_OFF_PX = 26;
const STAND_OFF_MM = 45;
const LABEL_HEIGHT = 22;
const LABEL_PADDING = 7;
/** From the dimension line to its label, px: past the tails of the arrows. */
const LABEL_CLEARANCE = 24;

interface FitMarkProjectorProps {
  readonly svg: RefObject<SVGSVGElement | null>;
  readonly marks: readonly FitMark[];
  readonly matrix: Matrix4;
  /** The inside of the cover shows: marks on the outside that is turned away stand off inward instead. */
  readonly open: boolean;
}

/** Moves the marks of the overlay to where they are in the picture, every frame. */
export function FitMarkProjector({ svg, marks, matrix, open }: FitMarkProjectorProps) {
  const invalidate = useThree((state) => state.invalidate);
  // biome-ignore lint/correctness/useExhaustiveDependencies: new marks want a new frame
  useEffect(() => invalidate(), [marks, invalidate]);

  useFrame(({ camera, size }) => {
    const groups = [...(svg.current?.querySelectorAll('g') ?? [])];
    const project = projector(camera, size, matrix);
    const centre: Pixel = [size.width / 2, size.height / 2];
    const drawn = marks.flatMap((mark, i) => {
      const group = groups[i];
      if (!group) return [];
      const far = isFar(mark, camera, matrix);
      const line = projectedDimension(mark, project, far && open ? -1 : 1);
      const inside = inPicture(line.middle, size);
      group.style.display = inside ? '' : 'none';
      group.toggleAttribute('data-far', far && !open);
      if (!inside) return [];
      const text = group.querySelector('text')!;
      return [{ group, line, text, width: text.getComputedTextLength() + 2 * LABEL_PADDING }];
    });
    const centres = placeLabels(
      drawn.map(({ line, width }) => ({ at: labelWish(line, width, centre), width, height: LABEL_HEIGHT })),
      size,
      drawn.map(({ line }) => ({ at: line.middle, width: 40, height: 14 })),
    );
    for (const [i, { group, line, text, width }] of drawn.entries()) {
      const [x, y] = centres[i]!;
      const [leader, extension, dimension, arrows, rect] = group.children as unknown as SVGElement[];
      set(leader!, { d: leaderPath(line.middle, [x, y], width) });
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

/** Whether a mark stands on the side that is turned away. */
function isFar({ from, standOff }: FitMark, camera: Camera, matrix: Matrix4): boolean {
  const foot = vector(from).applyMatrix4(matrix);
  return vector(standOff).transformDirection(matrix).dot(camera.position.clone().sub(foot).normalize()) < -0.25;
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

/**
 * The mark's dimension line, standing off by the same length in the picture from near and from far.
 * @param side 1 along the mark's own direction, -1 the other way
 */
function projectedDimension(mark: FitMark, project: Project, side: 1 | -1): DimensionLine {
  const [start, end] = [project(vector(mark.from)), project(vector(mark.to))];
  const near = project(vector(mark.from).addScaledVector(vector(mark.standOff), side));
  const perMm: Pixel = [near[0] - start[0], near[1] - start[1]];
  const reach = Math.min(STAND_OFF_MM, STAND_OFF_PX / Math.max(1e-6, Math.hypot(...perMm)));
  return dimensionLine(start, end, [perMm[0] * reach, perMm[1] * reach]);
}

/** Beyond the dimension line, the way it stands off, and a little away from the middle of the picture. */
function labelWish({ middle, stand }: DimensionLine, width: number, centre: Pixel): Pixel {
  const outward = unit([middle[0] - centre[0], middle[1] - centre[1]]);
  const lean = unit(stand);
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
