import {
  DxfWriter,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  Units,
  type vec3_t,
} from '@tarikjabiri/dxf';
import {
  baseLine,
  CAPITAL,
  type Contour,
  type Drawing,
  type Entity,
  hatchLines,
  pictureFrame,
  type Segment,
  segmentEnd,
  segmentStart,
  textWidth,
  type Vec2,
} from '../../core/index.ts';
import { brokenLines } from '../brokenLines.ts';
import { CAUTION, CAUTION_LAYER, CUTTING_LAYERS, type CuttingOptions, cuttingFile, rowWidth } from '../cuttingFile.ts';
import { LASER_CAUTION } from '../laserCaution.ts';

/**
 * Writes the pattern as a DXF in mm, one layer for each meaning, each in its colour and line type; closed outlines are
 * polylines whose arcs are bulges, holes are circles, slits lines. The cautions for a laser are comments (group 999) at
 * the head of the file, after the title, and, with words, text under the pieces. Pictures are frames, and a note says so in the same places.
 *
 * Throws RangeError for a kerf out of range.
 */
export function patternDxf(drawing: Drawing, options: CuttingOptions = {}): string {
  const { gap_mm = 10 } = options;
  const file = new DxfWriter();
  file.setUnits(Units.Millimeters);
  file.setVariable('$LASTSAVEDBY', { 1: 'Coverwright' });
  for (const { name, aci, dash } of CUTTING_LAYERS) {
    // In DXF a gap is a negative length.
    if (dash.length > 0)
      file.addLType(
        name,
        `${name.toLowerCase()} lines`,
        dash.map((part, i) => (i % 2 === 0 ? part : -part)),
      );
    file.addLayer(name, aci, dash.length > 0 ? name : 'Continuous');
  }
  const { width, height, pieces, cautions } = cuttingFile(drawing, options, gap_mm);
  const hasPictures = pieces.some(({ layers }) =>
    layers.some(({ entities }) => entities.some(({ kind }) => kind === 'picture')),
  );
  const notes = hasPictures ? [PICTURES] : [];
  const rows = [
    ...cautions,
    ...(cautions.length > 0 ? notes.flatMap((note) => brokenLines(note, width, rowWidth)) : []),
  ];
  for (const { at, layers } of pieces)
    for (const { layer, entities } of layers)
      for (const entity of entities) addEntity(file, entity, layer.name, ([x, y]) => [at[0] + x, at[1] + y]);
  rows.forEach((text, i) => {
    const from: Vec2 = [0, -gap_mm - CAUTION.row * i];
    const to: Vec2 = [textWidth(text, CAUTION.height), from[1]];
    addWords(file, text, CAUTION.height, from, to, CAUTION_LAYER.name);
  });
  const reach = Math.max(width, ...rows.map((text) => textWidth(text, CAUTION.height)));
  const low = rows.length === 0 ? 0 : -gap_mm - CAUTION.row * rows.length;
  file.setVariable('$MEASUREMENT', { 70: 1 });
  // Half a kerf more where a beam goes outside the drawn edge.
  const beam = (options.kerf_mm ?? 0) / 2;
  file.setVariable('$EXTMIN', { 10: -beam, 20: Math.min(low, -beam), 30: 0 });
  file.setVariable('$EXTMAX', { 10: Math.max(reach, width + beam), 20: height + beam, 30: 0 });
  const title = drawing.title.replace(/\p{Cc}/gu, ' ');
  return [title, ...LASER_CAUTION, ...notes].map((caution) => `999\n${caution}\n`).join('') + file.stringify();
}

const PICTURES =
  'Pictures are not in this file. Their frames are on the layer MARK; the SVG file and the PDF have them.';

/** Adds text fitted between two points, as wide in any font; the height of text in DXF is that of a capital. */
function addWords(file: DxfWriter, text: string, height: number, from: Vec2, to: Vec2, layerName: string): void {
  file.addText(point3d(...from), height * CAPITAL, text, {
    layerName,
    horizontalAlignment: TextHorizontalAlignment.Fit,
    secondAlignmentPoint: point3d(...to),
    rotation: degrees(Math.atan2(to[1] - from[1], to[0] - from[0])),
  });
}

type Map2 = (point: Vec2) => Vec2;

const degrees = (angle: number): number => (angle * 180) / Math.PI;

/** Adds an entity to a layer. */
export function addEntity(file: DxfWriter, entity: Entity, layerName: string, place: Map2): void {
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
    case 'picture':
      // A drawing exchange file has no pictures of its own: the frame shows where it lies, on a layer that is only drawn.
      file.addLWPolyline(
        pictureFrame(entity)
          .slice(1)
          .map((corner) => ({ point: point2d(...place(corner)) })),
        { layerName: 'MARK', flags: LWPolylineFlags.Closed },
      );
      return;
    case 'hatch':
      for (const { from, to } of hatchLines(entity)) file.addLine(at(from), at(to), { layerName });
      return;
    case 'text': {
      const [from, to] = baseLine(entity);
      addWords(file, entity.text, entity.height, place(from), place(to), layerName);
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
