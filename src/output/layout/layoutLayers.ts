import { type Entity, line, path, type Vec2 } from '../../core/index.ts';
import { CUTTING_LAYERS, type CuttingLayer } from '../cuttingFile.ts';
import { arrowLines, crossLines, type LayoutSheet, nameText } from './layoutSheet.ts';

/** Height of the names at most, mm. */
const NAME = 9;

const layer = (name: string, aci: number, colour: string): Pick<CuttingLayer, 'name' | 'aci' | 'colour' | 'dash'> => ({
  name,
  aci,
  colour,
  dash: [],
});

/** Of the layers that only a layout has, in colours that no layer of a pattern has. */
const HIDE = layer('HIDE', 64, '#608100');
const DEFECT = layer('DEFECT', 12, '#bd0000');

const known = (name: string) => CUTTING_LAYERS.find((each) => each.name === name)!;

export interface LayoutLayer {
  readonly layer: typeof HIDE;
  readonly entities: readonly Entity[];
}

/** What a cutter or a drawing program is given of a layout: the leather, then what is only drawn, and the cut edges last. */
export function layoutLayers(sheet: LayoutSheet): readonly LayoutLayer[] {
  const lines = (pairs: readonly (readonly [Vec2, Vec2])[]): Entity[] => pairs.map(([from, to]) => line(from, to));
  return [
    { layer: HIDE, entities: [closedPath(sheet.outline)] },
    { layer: DEFECT, entities: sheet.defects.map(closedPath) },
    { layer: known('TEXT'), entities: sheet.pieces.map((piece) => nameText(piece, NAME)) },
    { layer: known('DIRECTION'), entities: lines(sheet.pieces.flatMap(({ arrow }) => arrowLines(arrow))) },
    { layer: known('MARK'), entities: lines(sheet.crosses.flatMap(crossLines)) },
    { layer: known('CUT'), entities: sheet.pieces.map(({ polygon }) => closedPath(polygon)) },
  ].filter(({ entities }) => entities.length > 0);
}

/** A polygon as a closed path. */
const closedPath = (polygon: readonly Vec2[]) =>
  path(
    polygon.map((from, i) => line(from, polygon[(i + 1) % polygon.length]!)),
    true,
  );
