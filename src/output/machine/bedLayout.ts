import { type Drawing, flattened, layOut, type PieceDrawing, type PieceOutline, type Vec2 } from '../../core/index.ts';

/** Quarter turns counterclockwise. */
export type Quarters = 0 | 1 | 2 | 3;

/** One piece on the bed: turned by its quarters about the origin of its drawing, then shifted; mm from the bed's lower left. */
export interface LaidPiece {
  readonly piece: PieceDrawing;
  readonly quarters: Quarters;
  readonly shift: Vec2;
}

export interface BedLayout {
  readonly beds: readonly (readonly LaidPiece[])[];
  /** Whether the hide's backbone lies across the bed, along its width. */
  readonly isAcross: boolean;
}

interface Room {
  readonly width: number;
  readonly height: number;
  /** Kept free along the edges, and between pieces. */
  readonly margin: number;
  readonly gap: number;
}

/** Most that a chord stands off its arc, mm. */
const CHORD = 0.02;

/**
 * Lays all pieces on as few beds as the layout for hides finds, the backbone along the bed or across it, whichever takes fewer.
 * A piece with a direction keeps it.
 *
 * Throws RangeError for pieces that no bed holds: which, their size, the room, and what to do.
 */
export function bedLayout({ pieces }: Drawing, room: Room): BedLayout {
  const tries = ([false, true] as const).map((isAcross) => ({ isAcross, ...laidOut(pieces, room, isAcross) }));
  const [best] = tries.sort((a, b) => a.tooLarge.length - b.tooLarge.length || a.beds.length - b.beds.length);
  const { tooLarge, beds, isAcross } = best!;
  if (tooLarge.length > 0)
    throw new RangeError(
      `${tooLarge.map(({ name, width, height }) => `${name} is ${size(width, height)}`).join(', ')}; the bed has room for ${size(
        room.width - 2 * room.margin,
        room.height - 2 * room.margin,
      )} within its margins. Take a smaller margin or a larger bed, or cut ${tooLarge.length === 1 ? 'this piece' : 'these pieces'} by hand from the template.`,
    );
  return { beds, isAcross };
}

const size = (width: number, height: number): string =>
  `${Math.ceil(width * 10) / 10} × ${Math.ceil(height * 10) / 10} mm`;

function laidOut(pieces: readonly PieceDrawing[], { width, height, margin, gap }: Room, isAcross: boolean) {
  const backbone = isAcross ? 0 : Math.PI / 2;
  const outline: Vec2[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  const left = new Map(pieces.map((piece) => [piece.id as string, piece.count]));
  const outlines = pieces.map(
    ({ id, count, outline, layers }): PieceOutline => ({
      name: id,
      leather: 'outside',
      count,
      polygon: flattened(outline, CHORD).slice(0, -1),
      lies: layers.direction.length > 0 ? 'along' : 'either',
    }),
  );
  const beds: LaidPiece[][] = [];
  for (;;) {
    const rest = outlines.flatMap((each) => {
      const count = left.get(each.name)!;
      return count > 0 ? [{ ...each, count }] : [];
    });
    if (rest.length === 0) return { beds, tooLarge: [] };
    const { placed } = layOut(rest, { outline, defects: [], backbone }, { spacing: gap, edge: margin });
    if (placed.length === 0) return { beds, tooLarge: pieces.filter(({ id }) => left.get(id)! > 0) };
    beds.push(
      placed.map(({ name, quarters: fromBackbone, polygon }): LaidPiece => {
        left.set(name, left.get(name)! - 1);
        const i = outlines.findIndex((each) => each.name === name);
        const quarters = ((fromBackbone + (isAcross ? 3 : 0)) % 4) as Quarters;
        const [x, y] = quarterTurned(outlines[i]!.polygon[0]!, quarters);
        return { piece: pieces[i]!, quarters, shift: [polygon[0]![0] - x, polygon[0]![1] - y] };
      }),
    );
  }
}

/** A point turned about the origin, exactly. */
export function quarterTurned([x, y]: Vec2, quarters: Quarters): Vec2 {
  switch (quarters) {
    case 0:
      return [x, y];
    case 1:
      return [-y, x];
    case 2:
      return [-x, -y];
    case 3:
      return [y, -x];
  }
}
