import type { Vec2 } from '../../core/math/vec2.ts';
import { arrangePieces } from '../../core/pattern/arrangePieces.ts';
import { type Drawing, type Entity, LAYERS, type Layer } from '../../core/pattern/drawing.ts';
import { hatchLines } from '../../core/pattern/hatchLines.ts';
import { mirroredDrawing } from '../../core/pattern/mirrorDrawing.ts';
import { kerfed } from '../kerf.ts';
import { LASER_CAUTION } from '../laserCaution.ts';
import { hexInk, LAYER_STYLES } from '../layerStyle.ts';
import { svgNumber as n, pathData } from './pathData.ts';

export interface SvgOptions {
  /** Seen from the flesh side, for tracing there. */
  readonly mirrored?: boolean;
  /** Width that a laser burns away, mm, 0 to 2. Given, even as 0, the file is one for a laser and carries its cautions. */
  readonly kerf_mm?: number;
  /** Between pieces and round them, mm. */
  readonly gap_mm?: number;
  /** Layers to draw; all of them if left out. */
  readonly layers?: readonly Layer[];
}

const CAUTION_HEIGHT = 4;

/**
 * Writes the pattern as an SVG in true size: width and height in mm, one unit of the view box a millimetre.
 *
 * Each piece is a group, each layer a group in it. Throws RangeError for a kerf out of range.
 */
export function patternSvg(drawing: Drawing, options: SvgOptions = {}): string {
  const { mirrored = false, kerf_mm, gap_mm = 10, layers = LAYERS } = options;
  const seen = mirrored ? mirroredDrawing(drawing) : drawing;
  const { width, height, pieces } = arrangePieces(seen, gap_mm);
  const cautions = kerf_mm === undefined ? [] : LASER_CAUTION;
  const size = [width + 2 * gap_mm, height + 2 * gap_mm + cautions.length * CAUTION_HEIGHT * 1.5] as const;
  const groups = pieces.map(({ piece, copy, at }) => {
    const cut = kerfed(piece, kerf_mm ?? 0);
    const place = ([x, y]: Vec2): Vec2 => [gap_mm + at[0] + x, gap_mm + height - at[1] - y];
    const inside = layers
      .filter((layer) => cut.layers[layer].length > 0)
      .map((layer) => layerGroup(layer, cut.layers[layer], place));
    const id = piece.count === 1 ? piece.id : `${piece.id}-${copy}`;
    return `<g id="${id}">\n<title>${escaped(piece.name)}</title>\n${inside.join('\n')}\n</g>`;
  });
  const words = cautions.map(
    (text, i) =>
      `<text x="${n(gap_mm)}" y="${n(height + 2 * gap_mm + i * CAUTION_HEIGHT * 1.5)}" font-size="${CAUTION_HEIGHT}">${escaped(text)}</text>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(size[0])}mm" height="${n(size[1])}mm" viewBox="0 0 ${n(size[0])} ${n(size[1])}" font-family="sans-serif">`,
    `<title>${escaped(drawing.title)}${mirrored ? ', seen from the flesh side' : ''}</title>`,
    ...(cautions.length > 0 ? [`<desc>${escaped(cautions.join(' '))}</desc>`] : []),
    ...groups,
    ...words,
    '</svg>\n',
  ].join('\n');
}

type Map2 = (point: Vec2) => Vec2;

function layerGroup(layer: Layer, entities: readonly Entity[], place: Map2): string {
  const { width, dash, ink } = LAYER_STYLES[layer];
  const dashes = dash.length > 0 ? ` stroke-dasharray="${dash.join(' ')}"` : '';
  const style = `fill="none" stroke="${hexInk(ink)}" stroke-width="${width}"${dashes}`;
  const shapes = entities.map((entity) => shape(entity, place, hexInk(ink)));
  return `<g class="${layer}" ${style}>\n${shapes.join('\n')}\n</g>`;
}

function shape(entity: Entity, place: Map2, ink: string): string {
  switch (entity.kind) {
    case 'line':
      return `<path d="${pathData([entity], place)}"/>`;
    case 'arc': {
      if (Math.abs(entity.sweep) < 2 * Math.PI) return `<path d="${pathData([entity], place)}"/>`;
      const [x, y] = place(entity.centre);
      return `<circle cx="${n(x)}" cy="${n(y)}" r="${n(entity.radius)}"/>`;
    }
    case 'path':
      return `<path d="${pathData(entity.segments, place)}${entity.isClosed ? 'Z' : ''}"/>`;
    case 'hatch':
      return `<path d="${hatchLines(entity)
        .map((segment) => pathData([segment], place))
        .join('')}"/>`;
    case 'text': {
      const [x, y] = place(entity.at);
      const turn =
        entity.rotation === 0 ? '' : ` transform="rotate(${n((-entity.rotation * 180) / Math.PI)} ${n(x)} ${n(y)})"`;
      return `<text x="${n(x)}" y="${n(y)}" font-size="${n(entity.height)}" text-anchor="${entity.align}" fill="${ink}" stroke="none"${turn}>${escaped(entity.text)}</text>`;
    }
  }
}

const escaped = (text: string): string =>
  // Control characters are not allowed in XML at all.
  text
    .replace(/\p{Cc}/gu, ' ')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
