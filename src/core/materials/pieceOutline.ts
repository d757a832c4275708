import type { CoverDesign } from '../fold/coverDesign.ts';
import type { LeatherName } from '../job/jobSchema.ts';
import { flattened } from '../math/contour.ts';
import { doubleArea } from '../math/simplePolygon.ts';
import type { Vec2 } from '../math/vec2.ts';
import type { Drawing } from '../pattern/drawing.ts';
import { patternDrawing } from '../pattern/patternDrawing.ts';

/** A shape to cut `count` times. Its y axis runs along the spine, head up. */
export interface PieceOutline {
  readonly name: string;
  readonly leather: LeatherName;
  readonly count: number;
  /** Closed, mm, counterclockwise; arcs as short chords. */
  readonly polygon: readonly Vec2[];
  /** How its head lies on the hide: along the backbone, across it, or either. */
  readonly lies: 'along' | 'across' | 'either';
}

/** Most that a chord stands off its arc, mm. */
const CHORD_TOLERANCE = 0.02;

/**
 * Shapes to cut for a cover, from its pattern. A piece with a direction mark keeps its direction, because leather
 * stretches least along the backbone and most across it. Common practice, no source.
 */
export const pieceOutlines = (design: CoverDesign, drawing: Drawing = patternDrawing(design)): PieceOutline[] =>
  drawing.pieces.map(({ id, name, count, outline, layers }) => ({
    name,
    leather: id === 'lining' ? 'lining' : id === 'pocket' ? pocketLeather(design.job) : 'outside',
    count,
    polygon: flattened(outline, CHORD_TOLERANCE).slice(0, -1),
    lies: liesOf(design.job, layers.direction.length > 0),
  }));

/** How a piece lies on the hide, by whether it is marked with a direction. */
const liesOf = ({ making }: Pick<CoverDesign['job'], 'making'>, hasDirection: boolean): PieceOutline['lies'] =>
  !hasDirection ? 'either' : making.backbone === 'upright' ? 'along' : 'across';

/** Pockets as thick as the outside are cut from its hide, unless they have a hide, a price or a finish of their own. */
function pocketLeather({ leather, hides, rates, finish }: CoverDesign['job']): LeatherName {
  const { outside, pocket } = leather;
  const looks = finish.pocket ?? finish.outside;
  const looksAlike = looks.colour === finish.outside.colour && looks.surface === finish.outside.surface;
  const isSame = outside.min_mm === pocket.min_mm && outside.max_mm === pocket.max_mm;
  return isSame && looksAlike && hides.pocket === null && rates.prices.pocket_per_dm2 === null ? 'outside' : 'pocket';
}

/** Area of one polygon, mm2. */
export const polygonArea = (polygon: readonly Vec2[]): number => Math.abs(doubleArea(polygon)) / 2;

/** Leather of one kind that a cover takes. */
export interface LeatherArea {
  readonly leather: LeatherName;
  /** Area of the pieces themselves, mm2. */
  readonly net: number;
  /** Area to buy: net (1 + waste), mm2. */
  readonly gross: number;
}

/**
 * Areas by leather, in the order in which the leathers first occur.
 * @param waste share of the net area lost between and round the pieces, 0 or more
 */
export function leatherAreas(outlines: readonly PieceOutline[], waste: number): LeatherArea[] {
  const leathers = [...new Set(outlines.map(({ leather }) => leather))];
  return leathers.map((leather) => {
    const net = outlines
      .filter((outline) => outline.leather === leather)
      .reduce((sum, { polygon, count }) => sum + count * polygonArea(polygon), 0);
    return { leather, net, gross: net * (1 + waste) };
  });
}
