import type { PDFName, PDFOperator, PDFPage } from '@cantoo/pdf-lib';
import {
  addScaled,
  arcPoint,
  type Contour,
  type Entity,
  hatchLines,
  heading,
  type Layer,
  type Picture,
  pictureFrame,
  picturePixels,
  type Segment,
  segmentEnd,
  segmentStart,
  textWidth,
  type Vec2,
} from '../../core/index.ts';
import { LAYER_STYLES, type LayerStyle } from '../layerStyle.ts';
import type { Lettering } from './lettering.ts';
import { optionalName } from './optionalLayers.ts';
import type { PageMarks } from './pageMarks.ts';
import { PT } from './points.ts';
import type { Grouping, Leaf, TagOptions } from './structure.ts';

type PdfLib = typeof import('@cantoo/pdf-lib');

/** Where a drawing's millimetres lie on the page: page = origin + scale (point - from), page mm from the lower left. */
export interface PageMap {
  readonly origin: Vec2;
  readonly from: Vec2;
  readonly scale: readonly [number, number];
}

const WHOLE_PAGE: PageMap = { origin: [0, 0], from: [0, 0], scale: [1, 1] };

/** Widest angle of one Bezier curve: at an eighth of a turn its error is under 1e-6 of the radius. */
const CURVE_ANGLE = Math.PI / 4;

/** Draws drawing entities on one page of a PDF, by plain path operators; sizes in mm. */
export class PdfCanvas {
  private readonly lib: PdfLib;
  private readonly page: PDFPage;
  private readonly letters: Lettering;
  private readonly marks: PageMarks;
  private font: PDFName | undefined;
  private under: PDFName | undefined;

  constructor(lib: PdfLib, page: PDFPage, letters: Lettering, marks: PageMarks) {
    this.lib = lib;
    this.page = page;
    this.letters = letters;
    this.marks = marks;
  }

  /**
   * Draws one element of the sheet: a heading, a paragraph of several lines, a cell, a figure with what it shows in words. The
   * order of drawing is the order in which the sheet is read aloud.
   */
  tagged(role: Leaf, draw: () => void, options?: TagOptions): void {
    this.marks.tagged(role, draw, options);
  }

  /** Puts what is drawn within, also on other pages, into a list, a table, a row, a section. */
  group(role: Grouping, within: () => void): void {
    this.marks.structure.group(role, within);
  }

  /** Draws words that are not read aloud: running heads and feet, what stands there a second time. */
  artifact(draw: () => void): void {
    this.marks.artifact(draw);
  }

  /** Draws on a layer that a PDF viewer can show and hide. */
  optional(name: string, draw: () => void): void {
    this.marks.optional(name, draw);
  }

  /** Draws a layer's entities on a layer of the viewer too, clipped to a box of the page where one is given. */
  layer(
    layer: Layer,
    entities: readonly Entity[],
    map: PageMap,
    clip?: { x: number; y: number; width: number; height: number },
  ): void {
    const shapes = entities.filter((entity) => entity.kind !== 'text');
    const { lib } = this;
    const operators: PDFOperator[] = [lib.pushGraphicsState()];
    if (clip)
      operators.push(
        lib.rectangle(clip.x * PT, clip.y * PT, clip.width * PT, clip.height * PT),
        lib.clip(),
        lib.endPath(),
      );
    operators.push(...this.pen(LAYER_STYLES[layer]));
    for (const entity of shapes)
      operators.push(
        ...(entity.kind === 'picture' ? this.picture(entity, map) : [...this.shape(entity, map), lib.stroke()]),
      );
    for (const entity of entities)
      if (entity.kind === 'text') operators.push(...this.text(entity, map, textWidth(entity.text, entity.height)));
    operators.push(lib.popGraphicsState());
    this.optional(optionalName(layer), () => this.marks.shapes(operators));
  }

  /** Strokes lines in page mm. */
  lines(segments: readonly Segment[], style: LayerStyle): void {
    const { lib } = this;
    const drawn = segments.flatMap((segment) => [...this.shape(segment, WHOLE_PAGE), lib.stroke()]);
    this.marks.shapes([lib.pushGraphicsState(), ...this.pen(style), ...drawn, lib.popGraphicsState()]);
  }

  /** Fills a polygon in page mm with a colour, red, green and blue from 0 to 255. */
  area(outline: readonly Vec2[], ink: LayerStyle['ink']): void {
    this.areas([outline], ink);
  }

  /** Fills polygons in one colour as one shape: where they touch, no hair line shows between them. */
  areas(outlines: readonly (readonly Vec2[])[], [red, green, blue]: LayerStyle['ink']): void {
    const { lib } = this;
    this.marks.shapes([
      lib.pushGraphicsState(),
      lib.setFillingRgbColor(red / 255, green / 255, blue / 255),
      ...outlines.flatMap((outline) => [
        ...outline
          .map((point) => onPage(WHOLE_PAGE, point))
          .map((at, i) => (i === 0 ? lib.moveTo(...at) : lib.lineTo(...at))),
        lib.closePath(),
      ]),
      lib.fill(),
      lib.popGraphicsState(),
    ]);
  }

  /** Sets a line of words in page mm, shrunk to `width` if it is wider. */
  words(
    text: string,
    at: Vec2,
    height: number,
    options: { width?: number; rotation?: number; align?: 'start' | 'middle' } = {},
  ): void {
    const size = Math.min(
      height,
      options.width === undefined ? height : (height * options.width) / this.widthOf(text, height),
    );
    const entity = {
      kind: 'text',
      at,
      height: size,
      rotation: options.rotation ?? 0,
      align: options.align ?? 'start',
      text,
    } as const;
    this.marks.words([this.lib.pushGraphicsState(), ...this.text(entity, WHOLE_PAGE), this.lib.popGraphicsState()]);
  }

  /** Width of a line of words, mm. */
  widthOf(text: string, height: number): number {
    return this.letters.widthOf(text, height);
  }

  private pen({ width, dash, ink: [red, green, blue] }: LayerStyle): PDFOperator[] {
    const { lib } = this;
    return [
      lib.setLineWidth(width * PT),
      lib.setDashPattern(
        dash.map((length) => length * PT),
        0,
      ),
      lib.setStrokingRgbColor(red / 255, green / 255, blue / 255),
      lib.setFillingRgbColor(red / 255, green / 255, blue / 255),
    ];
  }

  private shape(entity: Exclude<Entity, { kind: 'text' | 'picture' }>, map: PageMap): PDFOperator[] {
    switch (entity.kind) {
      case 'line':
      case 'arc':
        return this.contour([entity], map);
      case 'path':
        return [...this.contour(entity.segments, map), ...(entity.isClosed ? [this.lib.closePath()] : [])];
      case 'hatch':
        return hatchLines(entity).flatMap((segment) => this.contour([segment], map));
    }
  }

  private contour(contour: Contour, map: PageMap): PDFOperator[] {
    if (contour.length === 0) return [];
    const { lib } = this;
    const at = (point: Vec2): [number, number] => onPage(map, point);
    return [
      lib.moveTo(...at(segmentStart(contour[0]!))),
      ...contour.flatMap((segment) => {
        if (segment.kind === 'line') return [lib.lineTo(...at(segment.to))];
        const steps = Math.max(1, Math.ceil(Math.abs(segment.sweep) / CURVE_ANGLE - 1e-9));
        const step = segment.sweep / steps;
        // Control points of a circular arc of angle a lie 4/3 tan(a/4) of the radius along its end tangents.
        const reach = (4 / 3) * Math.tan(step / 4) * segment.radius;
        return Array.from({ length: steps }, (_, i) => {
          const [from, to] = [
            arcPoint(segment, i / steps),
            i + 1 === steps ? segmentEnd(segment) : arcPoint(segment, (i + 1) / steps),
          ];
          const tangent = (k: number): Vec2 => heading(segment.start + k * step + Math.PI / 2);
          return lib.appendBezierCurve(
            ...at(addScaled(from, tangent(i), reach)),
            ...at(addScaled(to, tangent(i + 1), -reach)),
            ...at(to),
          );
        });
      }),
    ];
  }

  /** A picture in its greys, under what is drawn in its place; its frame where its data are damaged. */
  private picture(entity: Picture, map: PageMap): PDFOperator[] {
    const { lib, page } = this;
    const { artwork, origin, along, down } = entity;
    const grey = picturePixels(artwork);
    if (grey === null) return [...this.contour(frameLines(entity), map), lib.stroke()];
    const { context } = page.doc;
    const image = context.flateStream(grey, {
      Type: 'XObject',
      Subtype: 'Image',
      Width: artwork.width,
      Height: artwork.height,
      ColorSpace: 'DeviceGray',
      BitsPerComponent: 8,
    });
    const name = page.node.newXObject('Picture', context.register(image));
    this.under ??= page.node.newExtGState('Under', context.obj({ BM: 'Multiply' }));
    // An image is a unit square, its first row at the top.
    const [x, y] = onPage(map, addScaled(origin, down, 1));
    const [a, b] = [0, 1].map((axis) => along[axis]! * map.scale[axis]! * PT);
    const [c, d] = [0, 1].map((axis) => -down[axis]! * map.scale[axis]! * PT);
    return [
      lib.pushGraphicsState(),
      lib.setGraphicsState(this.under),
      lib.concatTransformationMatrix(a!, b!, c!, d!, x, y),
      lib.drawObject(name),
      lib.popGraphicsState(),
    ];
  }

  /** @param room width that the drawing keeps clear for the words, mm: narrower letters where they would run over it */
  private text(
    { at, height, rotation, align, text }: Extract<Entity, { kind: 'text' }>,
    map: PageMap,
    room = Number.POSITIVE_INFINITY,
  ): PDFOperator[] {
    const { lib } = this;
    const size = height * PT * Math.min(...map.scale);
    const width = this.widthOf(text, height);
    const squeeze = Math.min(1, room / width);
    const back = align === 'middle' ? (-this.letters.widthOf(text, size) * squeeze) / 2 : 0;
    const [x, y] = onPage(map, at);
    const [cos, sin] = [Math.cos(rotation), Math.sin(rotation)];
    this.font ??= this.page.node.newFontDictionary('Letters', this.letters.ref);
    return [
      lib.beginText(),
      lib.setFontAndSize(this.font, size),
      ...(squeeze === 1 ? [] : [lib.setCharacterSqueeze(100 * squeeze)]),
      lib.setTextMatrix(cos, sin, -sin, cos, x + back * cos, y + back * sin),
      ...this.letters.encoded(text).map((run) => lib.showText(run)),
      ...(squeeze === 1 ? [] : [lib.setCharacterSqueeze(100)]),
      lib.endText(),
    ];
  }
}

const frameLines = (picture: Picture): Segment[] => {
  const corners = pictureFrame(picture);
  return corners.slice(1).map((to, i) => ({ kind: 'line', from: corners[i]!, to }));
};

const onPage = ({ origin, from, scale }: PageMap, [x, y]: Vec2): [number, number] => [
  (origin[0] + scale[0] * (x - from[0])) * PT,
  (origin[1] + scale[1] * (y - from[1])) * PT,
];
