import { DxfWriter, Units } from '@tarikjabiri/dxf';
import { addEntity } from '../dxf/patternDxf.ts';
import { LASER_CAUTION } from '../laserCaution.ts';
import { layoutLayers } from './layoutLayers.ts';
import { type LayoutSheet, sheetBox } from './layoutSheet.ts';

/**
 * Writes the leather with the pieces laid on it as a DXF in mm, in the coordinates of the hide: a layer for each meaning, outlines as
 * closed polylines, the cut edges last. Title and cautions for a laser are comments (group 999) at its head.
 */
export function layoutDxf(sheet: LayoutSheet): string {
  const file = new DxfWriter();
  file.setUnits(Units.Millimeters);
  file.setVariable('$LASTSAVEDBY', { 1: 'Coverwright' });
  const { x, y } = sheetBox(sheet);
  file.setVariable('$MEASUREMENT', { 70: 1 });
  file.setVariable('$EXTMIN', { 10: x[0], 20: y[0], 30: 0 });
  file.setVariable('$EXTMAX', { 10: x[1], 20: y[1], 30: 0 });
  const layers = layoutLayers(sheet);
  for (const { layer } of layers) file.addLayer(layer.name, layer.aci, 'Continuous');
  for (const { layer, entities } of layers)
    for (const entity of entities) addEntity(file, entity, layer.name, (point) => point);
  const comments = [sheet.title, ...sheet.words, ...LASER_CAUTION].map((words) => words.replace(/\p{Cc}/gu, ' '));
  return comments.map((comment) => `999\n${comment}\n`).join('') + file.stringify();
}
