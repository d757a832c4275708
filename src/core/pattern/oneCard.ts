import { mirroredContour, type Segment } from '../math/contour.ts';
import type { Printer } from '../units/printer.ts';
import { capital } from '../words/capital.ts';
import { type Drawing, line, type PieceDrawing } from './drawing.ts';
import { holeWords } from './holeMarks.ts';
import type { Word } from './lettering.ts';
import { type CardLines, outsideDrawing } from './outsideDrawing.ts';
import { drawingOf, otherPieces, patternParts } from './patternDrawing.ts';
import { pieceCorner } from './pieceCorner.ts';
import { mouthLine } from './pocketDrawing.ts';
import type { PatternSource } from './seam.ts';

/** Height of the words beside a line of the card, mm. */
const WORDS = 2.5;

/** The pieces that a card of the outside can serve for. */
interface Served {
  readonly pocket: boolean;
  readonly lining: boolean;
}

/**
 * The pattern as one card of the outside that serves for the pockets and the lining too: their mouth lines and ends are
 * marked on it. A strap, a pen loop, and a pocket or lining that does not lie within the card, have cards of their own.
 *
 * A pocket has the corners, the height and the holes of the outside's end, so its mouth lies the pocket's cut width from
 * the cut edge, although the made pocket rises over the board. A centre lining lies in the middle of the outside. Pockets and
 * lining face the book: their leather lies the other way up under the card.
 * @param source a `CoverDesign`, or any job with its pieces and needs; in card for a trial
 */
export function oneCard(source: PatternSource): Drawing {
  const parts = patternParts(source);
  const others = otherPieces(source, parts);
  const serves = served(source);
  const card = cardLines(source, others, serves, parts.print);
  const outside = outsideDrawing(source, parts.seam, parts.strap, parts.loop, parts.print, card);
  const drawing = drawingOf(source, parts, [outside, ...ownCards(others, serves)]);
  return { ...drawing, notes: [...cardNotes(source, serves), ...drawing.notes] };
}

/** Whether pockets and lining can be cut by the card: their lines lie on it, the mouths in the halves of their own. */
export function served(source: PatternSource): Served {
  const { job, pieces } = source;
  const { width } = pieces.outside;
  const { size } = pieceCorner(job, pieces).corner;
  const lining = pieces.lining?.width ?? 0;
  const isWhole = job.construction.lining === 'full' && pieces.pocket.count > 0;
  return {
    pocket: pieces.pocket.count > 0 && pieces.pocket.width < width / 2,
    lining: lining > 0 && (isWhole || lining <= width - 2 * size),
  };
}

/** The pieces that the card does not serve for. */
export const ownCards = (others: readonly PieceDrawing[], serves: Served): PieceDrawing[] =>
  others.filter(({ id }) => !(id === 'pocket' && serves.pocket) && !(id === 'lining' && serves.lining));

/** Lines of the pockets and the lining in the frame of the outside, seen from its grain side: the front is at the right. */
export function cardLines(
  source: PatternSource,
  others: readonly PieceDrawing[],
  serves: Served,
  print: Printer,
): CardLines {
  const { job, pieces } = source;
  const { width, height } = pieces.outside;
  const liningWidth = serves.lining ? (pieces.lining?.width ?? 0) : 0;
  const back = mouthLine(source);
  const mouth: Segment[] = serves.pocket ? [...mirroredContour([back], width), back] : [];
  const [low, high] = [(width - liningWidth) / 2, (width + liningWidth) / 2];
  const lining = liningWidth === 0 || low <= 0 ? [] : [low, high].map((x) => line([x, 0], [x, height]));
  const upright = (text: string, x: number, names: 'mouth' | 'lining'): Word => [
    text,
    [x, height / 2],
    WORDS,
    Math.PI / 2,
    names,
  ];
  const aside = 1.5 * WORDS;
  const pocketWidth = pieces.pocket.width;
  const holesOf = (id: 'pocket' | 'lining'): string => {
    const holes = others.find((piece) => piece.id === id)?.holes ?? 0;
    return holes === 0 ? '' : `, ${holeWords(job, holes)}`;
  };
  return {
    mouth,
    lining,
    words: [
      ...(serves.pocket
        ? [
            upright('mouth of the front pocket', width - pocketWidth + aside, 'mouth'),
            upright('mouth of the back pocket', pocketWidth - aside, 'mouth'),
          ]
        : []),
      ...(lining.length > 0
        ? [upright('end of the lining', high - aside, 'lining'), upright('end of the lining', low + aside, 'lining')]
        : []),
    ],
    lines: [
      'outside: the whole card',
      ...(serves.pocket
        ? [['pockets: one end up to its mouth line,', `${print.size(pocketWidth)} wide${holesOf('pocket')} each`]]
        : []),
      ...(pieces.pocket.count === 0 ? ['pocket mouths: the cut edges at both ends'] : []),
      ...(liningWidth === 0
        ? []
        : lining.length === 0
          ? [`lining: the whole card${holesOf('lining')}`]
          : [['lining: between its two ends,', `${print.size(liningWidth)} wide${holesOf('lining')}`]]),
    ],
  };
}

/** How the one card is used. */
export function cardNotes({ job, pieces, isCard = false }: PatternSource, serves: Served): string[] {
  const sheet = isCard ? 'trial card' : 'leather';
  const [up, over, side] = isCard
    ? ['outside face up', 'inside face up', 'outside face']
    : ['grain side up', 'flesh side up', 'grain side'];
  const inner = [...(serves.pocket ? ['pockets'] : []), ...(serves.lining ? ['lining'] : [])].join(' and ');
  return [
    `Outside: lay the card as drawn on the ${sheet}, ${up}, and cut round all of it.`,
    ...(inner === ''
      ? []
      : [
          `${capital(inner)}: lay the card as drawn on the ${sheet}, ${over}, because here the ${side} faces the book. ` +
            `Snip a notch into the card at both ends of each line. Mark the notches on the ${sheet} and join the marks.`,
        ]),
    ...(serves.pocket && job.construction.mouth === 'curved'
      ? ['The mouths are curved: prick through the card along each, every finger breadth, and join the pricks.']
      : []),
    ...(serves.pocket
      ? [
          'Front pocket: the front end of the card, from cut edge to mouth line. Back pocket: the back end. Punch the holes of that end only.',
        ]
      : []),
    ...(pieces.pocket.count === 0
      ? ['The pockets are turned from the outside: their mouths are its cut edges, and no pocket is cut.']
      : []),
  ];
}
