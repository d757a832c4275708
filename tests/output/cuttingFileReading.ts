import { DOMParser, type Element } from '@xmldom/xmldom';
import DxfParser, {
  type IArcEntity,
  type ICircleEntity,
  type IEntity,
  type ILineEntity,
  type ILwpolylineEntity,
  type ITextEntity,
} from 'dxf-parser';
import { svgPathProperties } from 'svg-path-properties';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';

/** One entity of a cutting file, as an independent reader finds it; y up, mm. */
export interface Found {
  readonly layer: string;
  /** Points along it; of words the start of their base line. */
  readonly points: readonly Vec2[];
  readonly isClosed: boolean;
  /** Radii of its arcs, in order. */
  readonly radii: readonly number[];
  readonly text: string | null;
  /** Of the letters' body (em) in SVG, of a capital in DXF, mm. */
  readonly height: number;
  /** Along which the words run, radians counterclockwise. */
  readonly rotation: number;
  /** Width that the file gives the words in any font; null where the font decides. */
  readonly width: number | null;
}

export interface CuttingFile {
  /** In the order of the file. */
  readonly found: readonly Found[];
  /** Colour by layer, as the file writes it. */
  readonly colours: ReadonlyMap<string, string>;
  readonly size: Vec2 | null;
}

/** Most chords that an arc is read as, and the most that each stands off it, mm. */
const STEPS = 400;
const STRAY = 1e-3;
const nothing = { isClosed: false, radii: [], text: null, height: 0, rotation: 0, width: null };

const roundPoints = (centre: Vec2, radius: number, start: number, sweep: number): Vec2[] => {
  // A chord of the angle a stands off its arc by r a^2 / 8.
  const steps = Math.min(STEPS, Math.ceil(Math.abs(sweep) / Math.sqrt((8 * STRAY) / radius)));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = start + (sweep * i) / steps;
    return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
  });
};

/** A bulge is tan(angle / 4) of the arc to the next vertex (DXF reference). */
function polyline({ vertices, shape, layer }: ILwpolylineEntity): Found {
  const points: Vec2[] = [];
  const radii: number[] = [];
  for (let i = 0; i < (shape ? vertices.length : vertices.length - 1); i++) {
    const [a, b] = [nth(vertices, i), nth(vertices, (i + 1) % vertices.length)];
    points.push([a.x, a.y]);
    const angle = 4 * Math.atan(a.bulge ?? 0);
    if (angle === 0) continue;
    const rise = 1 / (2 * Math.tan(angle / 2));
    const centre: Vec2 = [(a.x + b.x) / 2 - (b.y - a.y) * rise, (a.y + b.y) / 2 + (b.x - a.x) * rise];
    const radius = Math.hypot(a.x - centre[0], a.y - centre[1]);
    radii.push(radius);
    points.push(...roundPoints(centre, radius, Math.atan2(a.y - centre[1], a.x - centre[0]), angle).slice(1, -1));
  }
  const last = nth(vertices, -1);
  points.push(shape ? nth(points, 0) : [last.x, last.y]);
  return { ...nothing, layer, points, radii, isClosed: shape };
}

function dxfEntity(entity: IEntity): Found {
  const { layer } = entity;
  switch (entity.type) {
    case 'LINE':
      return { ...nothing, layer, points: (entity as ILineEntity).vertices.map(({ x, y }): Vec2 => [x, y]) };
    case 'CIRCLE': {
      const { center, radius } = entity as ICircleEntity;
      const points = roundPoints([center.x, center.y], radius, 0, 2 * Math.PI);
      return { ...nothing, layer, points, radii: [radius], isClosed: true };
    }
    case 'ARC': {
      const { center, radius, startAngle, angleLength } = entity as IArcEntity;
      return {
        ...nothing,
        layer,
        points: roundPoints([center.x, center.y], radius, startAngle, angleLength),
        radii: [radius],
      };
    }
    case 'LWPOLYLINE':
    // Of edition R12, with the same vertices.
    case 'POLYLINE':
      return polyline(entity as ILwpolylineEntity);
    case 'TEXT': {
      const { startPoint, text, textHeight, rotation, halign } = entity as ITextEntity;
      // Only words that stand between two points have a second one.
      const endPoint = (entity as Partial<ITextEntity>).endPoint;
      const [x, y] = endPoint === undefined ? [0, 0] : [endPoint.x - startPoint.x, endPoint.y - startPoint.y];
      // 5: fitted between its two points (DXF reference, TEXT, group 72).
      const isFitted = halign === 5;
      return {
        ...nothing,
        layer,
        points: [[startPoint.x, startPoint.y]],
        text,
        height: textHeight,
        rotation: isFitted ? Math.atan2(y, x) : ((rotation ?? 0) * Math.PI) / 180,
        width: isFitted ? Math.hypot(x, y) : null,
      };
    }
    default:
      throw new Error(`a ${entity.type} in the DXF`);
  }
}

export function readDxf(text: string): CuttingFile {
  const file = new DxfParser().parseSync(text);
  if (file === null) throw new Error('not a DXF');
  const layers = Object.values(file.tables.layer.layers);
  return {
    found: file.entities.map(dxfEntity),
    colours: new Map(layers.map(({ name, colorIndex }) => [name, `${colorIndex}`])),
    size: null,
  };
}

const figures = (element: Element, ...names: string[]): number[] =>
  names.map((name) => Number(element.getAttribute(name)));

function svgElement(element: Element, layer: string): Found[] {
  if (element.tagName === 'circle') {
    const [x, y, radius] = figures(element, 'cx', 'cy', 'r') as [number, number, number];
    const points = roundPoints([x, -y], radius, 0, 2 * Math.PI);
    return [{ ...nothing, layer, points, radii: [radius], isClosed: true }];
  }
  if (element.tagName === 'text') {
    const [x, y, height] = figures(element, 'x', 'y', 'font-size') as [number, number, number];
    const turn = /^rotate\((-?[\d.e-]+)/.exec(element.getAttribute('transform') ?? '');
    const width = element.getAttribute('textLength');
    return [
      {
        ...nothing,
        layer,
        points: [[x, -y]],
        text: element.textContent ?? '',
        height,
        rotation: turn === null ? 0 : (-Number(turn[1]) * Math.PI) / 180,
        width: width === null ? null : Number(width),
      },
    ];
  }
  if (element.tagName !== 'path') return [];
  // A hatch is one path of many lines.
  const strokes = (element.getAttribute('d') ?? '').split(/(?=M)/);
  return strokes.map((d): Found => {
    const parts = new svgPathProperties(d).getParts().filter(({ length }) => length > 0);
    const points = parts.flatMap((part) => {
      const [{ start, end }, middle] = [part, part.getPointAtLength(part.length / 2)];
      const isStraight = Math.hypot(middle.x - (start.x + end.x) / 2, middle.y - (start.y + end.y) / 2) < 1e-9;
      const steps = isStraight ? 1 : Math.min(STEPS, Math.ceil(16 + 2 * part.length));
      return Array.from({ length: steps }, (_, i): Vec2 => {
        const { x, y } = part.getPointAtLength((part.length * i) / steps);
        return [x, -y];
      });
    });
    const last = nth(parts, -1).end;
    points.push([last.x, -last.y]);
    const radii = [...d.matchAll(/A([\d.e-]+)/g)].map(([, radius]) => Number(radius));
    return { ...nothing, layer, points, radii, isClosed: d.endsWith('Z') };
  });
}

export function readSvg(text: string): CuttingFile {
  const root = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  if (root === null) throw new Error('no root');
  const colours = new Map<string, string>();
  const found: Found[] = [];
  const visit = (element: Element, layer: string): void => {
    const own =
      element.tagName === 'g' ? (element.getAttribute('class') ?? element.getAttribute('id') ?? '').toUpperCase() : '';
    const here = own === '' ? layer : own;
    for (const colour of [element.getAttribute('stroke'), element.getAttribute('fill')])
      if (own !== '' && colour !== null && colour !== 'none') colours.set(own, colour);
    found.push(...svgElement(element, here));
    for (const child of Array.from(element.childNodes)) if (child.nodeType === 1) visit(child as Element, here);
  };
  visit(root, '');
  const [, , width, height] = defined(root.getAttribute('viewBox')).split(' ').map(Number);
  return { found, colours, size: [width!, height!] };
}
