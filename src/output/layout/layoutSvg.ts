import type { Vec2 } from '../../core/index.ts';
import { LASER_CAUTION } from '../laserCaution.ts';
import { escaped } from '../svg/escaped.ts';
import { svgNumber as n } from '../svg/pathData.ts';
import { layerGroup, shape } from '../svg/patternSvg.ts';
import { layoutLayers } from './layoutLayers.ts';
import { type LayoutSheet, sheetBox } from './layoutSheet.ts';

/**
 * Writes the leather with the pieces laid on it as an SVG in true size: one unit of the view box a millimetre, x as on the hide, y
 * turned down. Each layer is a group in its colour, the cut edges last; the cautions for a laser are its description.
 */
export function layoutSvg(sheet: LayoutSheet): string {
  const { x, y } = sheetBox(sheet);
  const [width, height] = [x[1] - x[0], y[1] - y[0]];
  const place = ([px, py]: Vec2): Vec2 => [px, -py];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(width)}mm" height="${n(height)}mm" viewBox="${[x[0], -y[1], width, height].map(n).join(' ')}" font-family="sans-serif">`,
    `<title>${escaped(sheet.title)}</title>`,
    `<desc>${escaped([...sheet.words, ...LASER_CAUTION].join(' '))}</desc>`,
    ...layoutLayers(sheet).map(({ layer, entities }) =>
      layerGroup(
        layer.name,
        layer,
        entities.map((entity) => shape(entity, place)),
      ),
    ),
    '</svg>\n',
  ].join('\n');
}
