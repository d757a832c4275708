import { distance, rotationBy, type SeenMark, type Vec3, type View } from '../core/index.ts';

/** What makes a photograph, or all of them together, tell less than they could; told while another can still be taken. */
export interface QualityTrouble {
  readonly code: 'noMarks' | 'fewMarks' | 'smallMarks' | 'blurred' | 'flat' | 'alike';
  /** What is wrong and what to do. */
  readonly words: string;
}

/** Marks that a photograph shows at least, so that where it was taken from is known well. Assumption of this project. */
const ENOUGH_MARKS = 6;
/** Least side of a mark, as a share of the picture's longer side: smaller ones are those of a sheet far away. Assumption. */
const SMALL = 1 / 80;
/** An edge wider than this share of the longer side is blurred, and one of so many pixels always sharp enough. Assumption. */
const BLURRED = { share: 1 / 500, pixels: 4 } as const;
/** Degrees off straight down: farther off, sides that stand upright hide what lies behind them. Assumption. */
const FLAT = 55;
/** Degrees between two directions of sight, from which on heights are told. Assumption. */
const ALIKE = 12;

/** What is wrong with one photograph of the sheet by its marks. `blur` as `seenMarks` gives it. */
export function photographTroubles(
  { width, height }: { readonly width: number; readonly height: number },
  { marks, blur }: { readonly marks: readonly SeenMark[]; readonly blur: number },
): QualityTrouble[] {
  if (marks.length === 0)
    return [
      {
        code: 'noMarks',
        words:
          'No mark of the sheet was found. Take the picture again from nearer, with the whole sheet in it, sharp and in even light.',
      },
    ];
  const longer = Math.max(width, height);
  const sides = marks
    .map(({ seen }) => Math.min(...seen.map((corner, i) => distance(corner, seen[(i + 1) % seen.length]!))))
    .sort((a, b) => a - b);
  const troubles: QualityTrouble[] = [];
  if (marks.length < ENOUGH_MARKS)
    troubles.push({
      code: 'fewMarks',
      words: `Only ${marks.length} of the marks were found. Take it again so that marks show on all sides of the book.`,
    });
  if (sides[sides.length >> 1]! < SMALL * longer)
    troubles.push({ code: 'smallMarks', words: 'The sheet is far away. Go nearer until it fills the picture.' });
  if (blur > Math.max(BLURRED.pixels, BLURRED.share * longer))
    troubles.push({
      code: 'blurred',
      words: 'The picture is blurred. Take it again with more light, and hold the camera still.',
    });
  return troubles;
}

/** What is wrong with where the photographs were taken from; for each photograph, and for all of them together. */
export function viewTroubles(views: readonly (View | null)[]): {
  readonly each: readonly QualityTrouble[][];
  readonly all: readonly QualityTrouble[];
} {
  const sights = views.map((view) => (view === null ? null : sightOfSheet(view)));
  const known = sights.filter((sight) => sight !== null);
  const isAlike = known.every((a) => known.every((b) => degrees(a, b) < ALIKE));
  return {
    each: sights.map((sight) =>
      sight !== null && degrees(sight, [0, 0, 1]) > FLAT
        ? [
            {
              code: 'flat',
              words: 'It was taken too far from the side. Hold the camera higher, so that it looks down on the book.',
            },
          ]
        : [],
    ),
    all:
      known.length > 0 && isAlike
        ? [
            {
              code: 'alike',
              words:
                'All pictures were taken from the same place, so that the thickness cannot be told. Take one more from another side.',
            },
          ]
        : [],
  };
}

/** Direction from the middle of the sheet to the camera. */
function sightOfSheet({ pose: { turn, shift } }: View): Vec3 {
  const rotation = rotationBy(turn);
  const along = (k: 0 | 1 | 2): number =>
    -(rotation[0][k] * shift[0] + rotation[1][k] * shift[1] + rotation[2][k] * shift[2]);
  // The sheet's y and z are turned over against those of the camera.
  return [along(0), -along(1), -along(2)];
}

function degrees(a: Vec3, b: Vec3): number {
  const cosine = (a[0] * b[0] + a[1] * b[1] + a[2] * b[2]) / (Math.hypot(...a) * Math.hypot(...b));
  return (Math.acos(Math.max(-1, Math.min(1, cosine))) * 180) / Math.PI;
}
