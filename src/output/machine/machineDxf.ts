import { DxfWriter, LWPolylineFlags, point2d, point3d, Units } from '@tarikjabiri/dxf';
import type { Segment, Vec2 } from '../../core/index.ts';
import { segmentStart } from '../../core/index.ts';
import { LASER_CAUTION } from '../laserCaution.ts';
import type { MachinePlan, PlannedBed } from './machinePlan.ts';
import { isCircle, type Stroke, strokeEnd } from './stroke.ts';

/** tan(sweep / 4) of the segment that leaves a vertex, 0 for a straight one (DXF reference, group 42). */
const bulge = (segment: Segment): number => (segment.kind === 'arc' ? Math.tan(segment.sweep / 4) : 0);

interface Vertex {
  readonly at: Vec2;
  readonly bulge: number;
}

function vertices(stroke: Stroke): Vertex[] {
  const all = stroke.path.map((segment): Vertex => ({ at: segmentStart(segment), bulge: bulge(segment) }));
  return stroke.isClosed ? all : [...all, { at: strokeEnd(stroke), bulge: 0 }];
}

/** What stands at the head of either edition, as comments: title and cautions, in letters that every reader has. */
const comments = (title: string, number: number): string[] => [`${title}, bed ${number}`, ...LASER_CAUTION].map(plain);

/** Text without letters beyond ASCII, written as editions before 2007 do: `\U+00E9`. */
const plain = (text: string): string =>
  text
    .replace(/\p{Cc}/gu, ' ')
    .replace(/[^\x20-\x7e]/gu, (letter) =>
      letter.length === 1 ? `\\U+${letter.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}` : '?',
    );

/**
 * One bed as a DXF of edition R12: mm, a layer for each pass in its colour, lines continuous because a dashed one may be cut in dashes;
 * strokes are LINE, CIRCLE, or POLYLINE with bulges. Source: DXF reference, release 12, from memory.
 */
export function machineDxfR12({ title, bed: { width, height } }: MachinePlan, { passes, number }: PlannedBed): string {
  const groups: (readonly [code: number, value: string | number])[] = [];
  const add = (...pairs: readonly (readonly [code: number, value: string | number])[]): void =>
    void groups.push(...pairs);
  for (const comment of comments(title, number)) add([999, comment]);
  add([0, 'SECTION'], [2, 'HEADER'], [9, '$ACADVER'], [1, 'AC1009']);
  add([9, '$EXTMIN'], [10, 0], [20, 0], [30, 0], [9, '$EXTMAX'], [10, width], [20, height], [30, 0]);
  add([9, '$LIMMIN'], [10, 0], [20, 0], [9, '$LIMMAX'], [10, width], [20, height], [0, 'ENDSEC']);
  add([0, 'SECTION'], [2, 'TABLES'], [0, 'TABLE'], [2, 'LTYPE'], [70, 1]);
  add([0, 'LTYPE'], [2, 'CONTINUOUS'], [70, 0], [3, 'Solid line'], [72, 65], [73, 0], [40, 0], [0, 'ENDTAB']);
  add([0, 'TABLE'], [2, 'LAYER'], [70, passes.length + 1]);
  const layer = (name: string, colour: number): void =>
    add([0, 'LAYER'], [2, name], [70, 0], [62, colour], [6, 'CONTINUOUS']);
  layer('0', 7);
  for (const { marks } of passes) layer(marks.layer, marks.dxfColour);
  add([0, 'ENDTAB'], [0, 'ENDSEC'], [0, 'SECTION'], [2, 'ENTITIES']);
  for (const { marks, strokes } of passes)
    for (const stroke of strokes) {
      const [first, ...rest] = stroke.path;
      if (isCircle(stroke) && first?.kind === 'arc')
        add([0, 'CIRCLE'], [8, marks.layer], ...point(first.centre, 10), [40, first.radius]);
      else if (rest.length === 0 && first?.kind === 'line')
        add([0, 'LINE'], [8, marks.layer], ...point(first.from, 10), ...point(first.to, 11));
      else {
        add([0, 'POLYLINE'], [8, marks.layer], [66, 1], ...point([0, 0], 10), [70, stroke.isClosed ? 1 : 0]);
        for (const each of vertices(stroke))
          add(
            [0, 'VERTEX'],
            [8, marks.layer],
            ...point(each.at, 10),
            ...(each.bulge === 0 ? [] : [[42, each.bulge] as const]),
          );
        add([0, 'SEQEND'], [8, marks.layer]);
      }
    }
  add([0, 'ENDSEC'], [0, 'EOF']);
  return groups
    .map(
      ([code, value]) =>
        `${String(code).padStart(3)}\n${typeof value === 'number' && isReal(code) ? real(value) : value}\n`,
    )
    .join('');
}

const point = ([x, y]: Vec2, code: number) =>
  [
    [code, x],
    [code + 10, y],
    [code + 20, 0],
  ] as const;

/** Groups whose values are numbers with a point (DXF reference: 10 to 59). */
const isReal = (code: number): boolean => code >= 10 && code < 60;

const real = (value: number): string => {
  const text = String(Math.round(value * 1e9) / 1e9);
  return /[.e]/.test(text) ? text : `${text}.0`;
};

/** One bed as a DXF of edition 2000: the same with units, metric measurement and extents in its head, and light polylines. */
export function machineDxf2000({ title, bed: { width, height } }: MachinePlan, { passes, number }: PlannedBed): string {
  const file = new DxfWriter();
  file.setUnits(Units.Millimeters);
  file.setVariable('$ACADVER', { 1: 'AC1015' });
  file.setVariable('$MEASUREMENT', { 70: 1 });
  file.setVariable('$EXTMIN', { 10: 0, 20: 0, 30: 0 });
  file.setVariable('$EXTMAX', { 10: width, 20: height, 30: 0 });
  for (const { marks } of passes) file.addLayer(marks.layer, marks.dxfColour, 'Continuous');
  for (const { marks, strokes } of passes) {
    const layerName = marks.layer;
    for (const stroke of strokes) {
      const [first, ...rest] = stroke.path;
      if (isCircle(stroke) && first?.kind === 'arc')
        file.addCircle(point3d(...first.centre), first.radius, { layerName });
      else if (rest.length === 0 && first?.kind === 'line')
        file.addLine(point3d(...first.from), point3d(...first.to), { layerName });
      else
        file.addLWPolyline(
          vertices(stroke).map(({ at, bulge }) => ({ point: point2d(...at), bulge })),
          { layerName, flags: stroke.isClosed ? LWPolylineFlags.Closed : LWPolylineFlags.None },
        );
    }
  }
  return (
    comments(title, number)
      .map((text) => `999\n${text}\n`)
      .join('') + file.stringify()
  );
}
