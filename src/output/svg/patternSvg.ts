import { strFromU8 } from 'fflate';
import {
  baseLine,
  type Drawing,
  type Entity,
  hatchLines,
  type Picture,
  pictureFrame,
  picturePixels,
  subtract,
  textWidth,
  type Vec2,
} from '../../core/index.ts';
import { CAUTION, CAUTION_LAYER, type CuttingLayer, type CuttingOptions, cuttingFile } from '../cuttingFile.ts';
import { LASER_CAUTION } from '../laserCaution.ts';
import { png } from '../png.ts';
import { escaped } from './escaped.ts';
import { svgNumber as n, pathData } from './pathData.ts';

/** Width of every line, mm: the machine follows its middle. */
const PEN = 0.2;

/**
 * Writes the pattern as an SVG in true size: width and height in mm, one unit of the view box a millimetre.
 *
 * Each piece is a group, each layer a group in it, in its colour and in the order of work; the cautions for a laser are a
 * group under the pieces, and always its description. `gap_mm` is kept round the pieces, too. Throws RangeError for a kerf
 * out of range.
 */
export function patternSvg(drawing: Drawing, options: CuttingOptions = {}): string {
  const { mirrored = false, gap_mm = 10 } = options;
  const { width, height, pieces, cautions } = cuttingFile(drawing, options, gap_mm);
  const size = [width + 2 * gap_mm, height + 2 * gap_mm + cautions.length * CAUTION.row] as const;
  const groups = pieces.map(({ id, name, at, layers }) => {
    const place = ([x, y]: Vec2): Vec2 => [gap_mm + at[0] + x, gap_mm + height - at[1] - y];
    const inside = layers.map(({ layer, entities }) =>
      layerGroup(
        `${id}-${layer.name}`,
        layer,
        entities.map((entity) => shape(entity, place)),
      ),
    );
    return `<g id="${id}">\n<title>${escaped(name)}</title>\n${inside.join('\n')}\n</g>`;
  });
  const rows = cautions.map((text, i) =>
    words(text, [gap_mm, height + 2 * gap_mm + i * CAUTION.row], CAUTION.height, textWidth(text, CAUTION.height)),
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(size[0])}mm" height="${n(size[1])}mm" viewBox="0 0 ${n(size[0])} ${n(size[1])}" font-family="sans-serif">`,
    `<title>${escaped(drawing.title)}${mirrored ? ', seen from the flesh side' : ''}</title>`,
    `<desc>${escaped(LASER_CAUTION.join(' '))}</desc>`,
    ...(rows.length > 0 ? [layerGroup(CAUTION_LAYER.name, CAUTION_LAYER, rows)] : []),
    ...groups,
    '</svg>\n',
  ].join('\n');
}

type Map2 = (point: Vec2) => Vec2;

/** A layer as a group in its colour. */
export function layerGroup(
  id: string,
  { name, colour, dash }: Pick<CuttingLayer, 'name' | 'colour' | 'dash'>,
  shapes: readonly string[],
): string {
  const dashes = dash.length > 0 ? ` stroke-dasharray="${dash.join(' ')}"` : '';
  const isWords = shapes.every((shape) => shape.startsWith('<text'));
  const style = isWords ? `fill="${colour}"` : `fill="none" stroke="${colour}" stroke-width="${PEN}"${dashes}`;
  return `<g id="${id}" class="${name.toLowerCase()}" ${style}>\n${shapes.join('\n')}\n</g>`;
}

/** Words from the start of their base line, of the same width in any font. */
function words(text: string, [x, y]: Vec2, height: number, width: number, turn = ''): string {
  return `<text x="${n(x)}" y="${n(y)}" font-size="${n(height)}" textLength="${n(width)}" lengthAdjust="spacingAndGlyphs"${turn}>${escaped(text)}</text>`;
}

/** A picture as an embedded PNG; what is drawn in its place shows through. Its frame where its data are damaged. */
function image({ artwork, ...laid }: Picture, place: Map2): string {
  const { width, height } = artwork;
  const grey = picturePixels(artwork);
  const [at, end, , foot] = pictureFrame(laid).map(place);
  if (grey === null)
    return `<path d="M${pictureFrame(laid)
      .map((corner) => place(corner).map(n).join(' '))
      .join('L')}Z"/>`;
  const address = `data:image/png;base64,${btoa(strFromU8(png({ width, height, channels: 1, bytes: grey }), true))}`;
  const [along, down] = [subtract(end!, at!), subtract(foot!, at!)];
  return `<image href="${address}" width="1" height="1" preserveAspectRatio="none" style="mix-blend-mode:multiply" transform="matrix(${[...along, ...down, ...at!].map(n).join(' ')})"/>`;
}

/** One entity as an element. */
export function shape(entity: Entity, place: Map2): string {
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
    case 'picture':
      return image(entity, place);
    case 'hatch':
      return `<path d="${hatchLines(entity)
        .map((segment) => pathData([segment], place))
        .join('')}"/>`;
    case 'text': {
      const { text, height, rotation } = entity;
      const at = place(baseLine(entity)[0]);
      const turn =
        rotation === 0 ? '' : ` transform="rotate(${n((-rotation * 180) / Math.PI)} ${at.map(n).join(' ')})"`;
      return words(text, at, height, textWidth(text, height), turn);
    }
  }
}
