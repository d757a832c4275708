import { composed, type Matrix, numbersOf, scaling, translation } from './matrix.ts';

/** A rectangle of the drawing's own units. */
export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The page of 300 x 150 px that SVG takes where nothing says a size. It only gives percents a meaning. */
export const UNSAID_PORT: ViewBox = { x: 0, y: 0, width: 300, height: 150 };

/** The box of a `viewBox` attribute; undefined where it is none, or is empty. */
export function viewBoxOf(text: string | undefined): ViewBox | undefined {
  const numbers = numbersOf(text ?? '');
  const [x = 0, y = 0, width = 0, height = 0] = numbers;
  return numbers.length === 4 && width > 0 && height > 0 ? { x, y, width, height } : undefined;
}

const ALIGN = { Min: 0, Mid: 0.5, Max: 1 } as const;
type Align = keyof typeof ALIGN;

/** The map of a view box into a viewport by `preserveAspectRatio` (SVG 1.1, 7.8), `xMidYMid meet` by default. */
export function fitted(box: ViewBox, port: ViewBox, aspect = ''): Matrix {
  const [across, down] = [port.width / box.width, port.height / box.height];
  const toOrigin = translation(-box.x, -box.y);
  if (/^\s*none/.test(aspect)) return composed(composed(translation(port.x, port.y), scaling(across, down)), toOrigin);
  const scale = /slice/.test(aspect) ? Math.max(across, down) : Math.min(across, down);
  const [, x, y] = /x(Min|Mid|Max)Y(Min|Mid|Max)/.exec(aspect) ?? ['', 'Mid', 'Mid'];
  const moved = translation(
    port.x + ALIGN[x as Align] * (port.width - scale * box.width),
    port.y + ALIGN[y as Align] * (port.height - scale * box.height),
  );
  return composed(composed(moved, scaling(scale, scale)), toOrigin);
}

/** CSS pixels in a unit (CSS Values 3, 5.2), 96 to the inch. */
const PIXELS: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  pt: 96 / 72,
  pc: 16,
  in: 96,
  cm: 96 / 2.54,
  mm: 96 / 25.4,
  Q: 96 / 101.6,
  em: 16,
  ex: 8,
};

/** Units that say how long a line is on the table: a pixel does not. */
const REAL = /(?:mm|cm|in|pt|pc|Q)\s*$/;

/** A length in pixels; percents are of `whole`. Undefined where the text is no length. */
export function lengthOf(text: string | undefined, whole: number): number | undefined {
  const [, number, unit = ''] =
    /^\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)\s*(%|[a-zA-Z]*)\s*$/.exec(text ?? '') ?? [];
  if (number === undefined) return undefined;
  const pixels = unit === '%' ? whole / 100 : PIXELS[unit];
  return pixels === undefined ? undefined : Number(number) * pixels;
}

/** A length in mm, where its unit is a real one. */
export const realLength = (text: string | undefined): number | undefined => {
  const pixels = REAL.test(text ?? '') ? lengthOf(text, 0) : undefined;
  return pixels === undefined ? undefined : (pixels * 25.4) / 96;
};
