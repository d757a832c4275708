import {
  Colors,
  DxfWriter,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  Units,
  type vec3_t,
} from '@tarikjabiri/dxf';
import { type Contour, type Segment, segmentEnd, segmentStart } from '../../core/math/contour.ts';
import type { Vec2 } from '../../core/math/vec2.ts';
import { arrangePieces } from '../../core/pattern/arrangePieces.ts';
import { type Drawing, type Entity, LAYERS, type Layer } from '../../core/pattern/drawing.ts';
import { hatchLines } from '../../core/pattern/hatchLines.ts';
import { mirroredDrawing } from '../../core/pattern/mirrorDrawing.ts';
import { kerfed } from '../kerf.ts';
import { LASER_CAUTION } from '../laserCaution.ts';

export interface DxfOptions {
  /** Seen from the flesh side. */
  readonly mirrored?: boolean;
  /** Width that the beam burns away, mm, 0 to 2. */
  readonly kerf_mm?: number;
  /** Between pieces, mm. */
  readonly gap_mm?: number;
  /** Layers to write; all of them if left out. */
  readonly layers?: readonly Layer[];
}

/** Layer names of the file, and their colour numbers of the open DXF palette: a machine tells passes apart by them. */
const DXF_COLOURS: Readonly<Record<Layer, number>> = {
  cut: Colors.White,
  fold: Colors.Blue,
  seam: Colors.Cyan,
  hole: Colors.Magenta,
  skive: Colors.Green,
  book: 8,
  centre: 9,
  direction: Colors.Yellow,
  mark: Colors.Red,
  text: Colors.White,
};

const dxfLayer = (layer: Layer): string => layer.toUpperCase();

/**
 * Writes the pattern as a DXF in mm, one layer for each meaning; closed outlines are polylines whose arcs are bulges,
 * holes are circles, slits lines. The cautions for a laser stand as text under the pieces.
 *
 * Throws RangeError for a kerf out of range.
 */
export function patternDxf(drawing: Drawing, options: DxfOptions = {}): string {
  const { mirrored = false, kerf_mm = 0, gap_mm = 10, layers = LAYERS } = options;
  const file = new DxfWriter();
  file.setUnits(Units.Millimeters);
  file.setVariable('$LASTSAVEDBY', { 1: 'Coverwright' });
  for (const layer of LAYERS) file.addLayer(dxfLayer(layer), DXF_COLOURS[layer], 'Continuous');
  const { pieces } = arrangePieces(mirrored ? mirroredDrawing(drawing) : drawing, gap_mm);
  for (const { piece, at } of pieces) {
    const cut = kerfed(piece, kerf_mm);
    for (const layer of layers)
      for (const entity of cut.layers[layer]) add(file, entity, dxfLayer(layer), ([x, y]) => [at[0] + x, at[1] + y]);
  }
  LASER_CAUTION.forEach((text, i) => {
    file.addText(point3d(0, -gap_mm - 6 * i), 4, text, { layerName: dxfLayer('text') });
  });
  return file.stringify();
}

type Map2 = (point: Vec2) => Vec2;

const degrees = (angle: number): number => (angle * 180) / Math.PI;

function add(file: DxfWriter, entity: Entity, layerName: string, place: Map2): void {
  const at = (point: Vec2): vec3_t => point3d(...place(point));
  switch (entity.kind) {
    case 'line':
      file.addLine(at(entity.from), at(entity.to), { layerName });
      return;
    case 'arc': {
      const { centre, radius, start, sweep } = entity;
      if (Math.abs(sweep) >= 2 * Math.PI) file.addCircle(at(centre), radius, { layerName });
      // A DXF arc always runs counterclockwise.
      else
        file.addArc(
          at(centre),
          radius,
          degrees(Math.min(start, start + sweep)),
          degrees(Math.max(start, start + sweep)),
          { layerName },
        );
      return;
    }
    case 'path':
      file.addLWPolyline(polylineVertices(entity.segments, entity.isClosed, place), {
        layerName,
        flags: entity.isClosed ? LWPolylineFlags.Closed : LWPolylineFlags.None,
      });
      return;
    case 'hatch':
      for (const { from, to } of hatchLines(entity)) file.addLine(at(from), at(to), { layerName });
      return;
    case 'text': {
      const { height, rotation, align, text } = entity;
      file.addText(at(entity.at), height, text, {
        layerName,
        rotation: degrees(rotation),
        ...(align === 'middle'
          ? { horizontalAlignment: TextHorizontalAlignment.Center, secondAlignmentPoint: at(entity.at) }
          : {}),
      });
    }
  }
}

/** Vertices with the bulge of the segment that leaves each: tan(sweep / 4), 0 for a straight one (DXF reference, LWPOLYLINE). */
function polylineVertices(segments: Contour, isClosed: boolean, place: Map2) {
  const bulge = (segment: Segment): number => (segment.kind === 'arc' ? Math.tan(segment.sweep / 4) : 0);
  const vertices = segments.map((segment) => ({
    point: point2d(...place(segmentStart(segment))),
    bulge: bulge(segment),
  }));
  const last = segments.at(-1);
  if (!isClosed && last !== undefined) vertices.push({ point: point2d(...place(segmentEnd(last))), bulge: 0 });
  return vertices;
}
