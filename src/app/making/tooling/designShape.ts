import {
  type Artwork,
  type Box2,
  cached,
  designCopies,
  faceOf,
  type LetterFace,
  type LetterFaces,
  type MovableDesign,
  mostCopies,
  onCopy,
  reachOf,
  type ToolingDesign,
  type Vec2,
} from '../../../core/index.ts';
import { pictureAddress } from './pictureAddress.ts';

/** A title or drawing by itself, about its centre, in units of its own: y down, before it is scaled, mirrored or turned. */
export interface DesignShape {
  /** Path data; empty for a picture. */
  readonly data: string;
  /** Address of a picture laid as it is. */
  readonly picture: string | null;
  /** How far it reaches. */
  readonly box: Box2;
  /** How many points its lines have. */
  readonly points: number;
  /** mm a unit. */
  readonly scale: number;
}

/** Shapes by what they are drawn from: a drag or a key changes only how they are placed. */
type Drawn = Omit<DesignShape, 'scale'>;

const EMPTY: Drawn = { data: '', picture: null, points: 0, box: { x: [0, 0], y: [0, 0] } };

const linesKnown = new Map<string, Drawn>();
const titleShapes = new WeakMap<LetterFace, Map<string, Drawn>>();

/** Shapes kept at once: a text that is typed makes one at each key. */
const KEPT = 60;

/** The shape of a design; empty where its letters are not loaded or its drawing is not in the job. */
export function designShape(design: MovableDesign, artworks: readonly Artwork[], faces: LetterFaces): DesignShape {
  if (design.kind === 'title') {
    const face = faceOf(faces, design.face);
    return { ...(face === undefined ? EMPTY : titleShape(face, design.text)), scale: design.height_mm };
  }
  const artwork = artworks.find(({ id }) => id === design.artwork);
  if (artwork === undefined) return { ...EMPTY, scale: 1 };
  return { ...artworkShape(artwork), scale: design.width_mm / artwork.width };
}

function titleShape(face: LetterFace, text: string): Drawn {
  const texts = titleShapes.get(face) ?? new Map<string, Drawn>();
  titleShapes.set(face, texts);
  return cached(texts, text, KEPT, () => {
    const { polylines, width } = face.outline(text);
    const lines = polylines.map((line) => line.map(([x, y]): Vec2 => [x - width / 2, 0.5 - y]));
    const [low, high] = reachOf(lines)?.y ?? [0, 0];
    const points = lines.reduce((sum, line) => sum + line.length, 0);
    const data = lines.map((line) => `M${line.map(([u, v]) => `${u.toFixed(4)},${v.toFixed(4)}`).join(' ')}`).join('');
    return {
      data,
      picture: null,
      points,
      box: { x: [-width / 2, width / 2], y: [Math.min(-0.5, low), Math.max(0.5, high)] },
    };
  });
}

function artworkShape(artwork: Artwork): Drawn {
  const { width, height } = artwork;
  const box: Box2 = { x: [-width / 2, width / 2], y: [-height / 2, height / 2] };
  if (artwork.kind === 'picture') return { data: '', picture: pictureAddress(artwork), points: 0, box };
  const { lines } = artwork;
  return cached(linesKnown, lines, KEPT, () => ({
    data: linesData(lines, width, height),
    picture: null,
    // Each point is a pair.
    points: lines.split(',').length - 1,
    box,
  }));
}

/**
 * The lines of a drawing as path data about the middle of its box. As they are kept, each line begins at a point from the
 * origin and goes on by steps: `m10,20 3,-4z`, which is `M10,20l3,-4z` less half the box.
 */
const linesData = (lines: string, width: number, height: number): string =>
  lines.replace(/m(\d+),(\d+) ?/g, (_, x: string, y: string) => `M${Number(x) - width / 2},${Number(y) - height / 2}l`);

/** How far all copies of a design reach from its place, mm, y up. */
export function designReach(design: MovableDesign, { box, scale, points }: DesignShape): Box2 {
  const corners = designCopies(design, [-design.x_mm, -design.y_mm])
    .slice(0, mostCopies(points))
    .flatMap((copy) => box.x.flatMap((x) => box.y.map((y) => onCopy(copy)([x * scale, -y * scale]))));
  return reachOf([corners])!;
}

export const isMovable = (design: ToolingDesign): design is MovableDesign => design.kind !== 'border';
