import { numbersOf } from './matrix.ts';
import { lengthOf, type ViewBox } from './viewBox.ts';

/** The shapes that are drawn. */
const SHAPES = ['path', 'line', 'polyline', 'polygon', 'rect', 'circle', 'ellipse'] as const;
export type Shape = (typeof SHAPES)[number];

export const isShape = (name: string): name is Shape => (SHAPES as readonly string[]).includes(name);

/** The path data that a basic shape stands for (SVG 1.1, 9); empty where it draws nothing. */
export function shapePath(name: Shape, attributes: Readonly<Record<string, string>>, port: ViewBox): string {
  const diagonal = Math.hypot(port.width, port.height) / Math.SQRT2;
  const across = (key: string) => lengthOf(attributes[key], port.width) ?? 0;
  const down = (key: string) => lengthOf(attributes[key], port.height) ?? 0;
  const [cx, cy] = [across('cx'), down('cy')];
  switch (name) {
    case 'path':
      return attributes.d ?? '';
    case 'line':
      return `M${across('x1')} ${down('y1')}L${across('x2')} ${down('y2')}`;
    case 'polyline':
    case 'polygon':
      return polygonPath(attributes.points ?? '', name === 'polygon');
    case 'circle': {
      const radius = lengthOf(attributes.r, diagonal) ?? 0;
      return ellipsePath(cx, cy, radius, radius);
    }
    case 'ellipse': {
      const [rx, ry] = [lengthOf(attributes.rx, port.width), lengthOf(attributes.ry, port.height)];
      return ellipsePath(cx, cy, rx ?? ry ?? 0, ry ?? rx ?? 0);
    }
    case 'rect': {
      const [rx, ry] = [lengthOf(attributes.rx, port.width), lengthOf(attributes.ry, port.height)];
      return rectPath(across('x'), down('y'), across('width'), down('height'), rx ?? ry ?? 0, ry ?? rx ?? 0);
    }
  }
}

function polygonPath(points: string, isClosed: boolean): string {
  const numbers = numbersOf(points);
  const whole = numbers.slice(0, numbers.length - (numbers.length % 2));
  return whole.length < 4 ? '' : `M${whole.join(' ')}${isClosed ? 'Z' : ''}`;
}

function ellipsePath(cx: number, cy: number, rx: number, ry: number): string {
  if (!(rx > 0 && ry > 0)) return '';
  return `M${cx - rx} ${cy}A${rx} ${ry} 0 0 1 ${cx + rx} ${cy}A${rx} ${ry} 0 0 1 ${cx - rx} ${cy}Z`;
}

function rectPath(x: number, y: number, width: number, height: number, roundX: number, roundY: number): string {
  if (!(width > 0 && height > 0)) return '';
  const [rx, ry] = [Math.min(Math.max(0, roundX), width / 2), Math.min(Math.max(0, roundY), height / 2)];
  if (rx === 0 || ry === 0) return `M${x} ${y}h${width}v${height}h${-width}Z`;
  const corner = (dx: number, dy: number) => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`;
  return (
    `M${x + rx} ${y}h${width - 2 * rx}${corner(rx, ry)}v${height - 2 * ry}${corner(-rx, ry)}` +
    `h${2 * rx - width}${corner(-rx, -ry)}v${2 * ry - height}${corner(rx, -ry)}Z`
  );
}
