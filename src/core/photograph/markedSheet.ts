import type { Vec2 } from '../math/vec2.ts';

/** Papers on which a measuring sheet with marks is printed, mm (ISO 216; ANSI/ASME Y14.1 size A). */
export const MARKED_PAPERS = {
  A4: { width: 210, height: 297, pages: 6, firstMark: 0 },
  Letter: { width: 215.9, height: 279.4, pages: 4, firstMark: 144 },
} as const;

export type MarkedPaper = keyof typeof MARKED_PAPERS;

/** Side of a mark, mm; a mark is eight cells wide, black at its rim. */
export const MARK_SIDE = 18;
/** Distance of the marks from the edge of the paper, mm: printers leave less than that white. */
const MARGIN = 8;
/** Marks along the short and the long side of a page; they stand round its rim, where a book leaves them in sight. */
const ACROSS = 6;
const ALONG = 8;
const MARKS_ON_PAGE = 2 * ACROSS + 2 * (ALONG - 2);

/** A mark of a page. Places are in mm from the middle of the page, y toward its head. */
export interface MarkPlace {
  /** Its number among the marks of the dictionary. */
  readonly id: number;
  /** Corners clockwise from that which is the upper left as printed. */
  readonly corners: readonly [Vec2, Vec2, Vec2, Vec2];
}

/** A bar to lay a ruler on: from end to end, mm from the middle of the page, and its length as meant. */
export interface CheckBar {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly length: number;
}

export interface MarkedPage {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly MarkPlace[];
  /** Across the page and along it. */
  readonly bars: { readonly across: CheckBar; readonly along: CheckBar };
}

/**
 * Page `page` (from 0) of a measuring sheet: which marks it has and where.
 *
 * @throws RangeError where there is no such page
 */
export function markedPage(paper: MarkedPaper, page: number): MarkedPage {
  const { width, height, pages, firstMark } = MARKED_PAPERS[paper];
  if (!(Number.isInteger(page) && page >= 0 && page < pages))
    throw new RangeError(`There is no page ${page + 1}: a sheet on ${paper} has pages 1 to ${pages}.`);
  const [left, bottom] = [MARGIN - width / 2, MARGIN - height / 2];
  const stepAcross = (width - 2 * MARGIN - MARK_SIDE) / (ACROSS - 1);
  const stepAlong = (height - 2 * MARGIN - MARK_SIDE) / (ALONG - 1);
  const lower: Vec2[] = [];
  for (let row = 0; row < ALONG; row++)
    for (let column = 0; column < ACROSS; column++)
      if (row === 0 || row === ALONG - 1 || column === 0 || column === ACROSS - 1)
        lower.push([left + column * stepAcross, bottom + row * stepAlong]);
  // Both bars pass between two marks at each end, and end at the margin of the marks.
  const gapAcross = left + MARK_SIDE + (stepAcross - MARK_SIDE) / 2;
  const gapAlong = bottom + MARK_SIDE + (stepAlong - MARK_SIDE) / 2;
  return {
    width,
    height,
    marks: lower.map(([x, y], i) => ({
      id: firstMark + page * MARKS_ON_PAGE + i,
      corners: [
        [x, y + MARK_SIDE],
        [x + MARK_SIDE, y + MARK_SIDE],
        [x + MARK_SIDE, y],
        [x, y],
      ],
    })),
    bars: {
      across: bar(width, (at) => [at, gapAlong]),
      along: bar(height, (at) => [gapAcross, at]),
    },
  };
}

/** As long as the paper lets it be in whole centimetres, in its middle. */
function bar(side: number, at: (place: number) => Vec2): CheckBar {
  const length = 10 * Math.floor((side - 2 * MARGIN) / 10);
  return { from: at(-length / 2), to: at(length / 2), length };
}

/** The page that has a mark, and the mark's place; null for a number that no sheet has. */
export function placeOfMark(id: number): { paper: MarkedPaper; page: number; corners: MarkPlace['corners'] } | null {
  for (const paper of ['A4', 'Letter'] as const) {
    const { firstMark, pages } = MARKED_PAPERS[paper];
    const page = Math.floor((id - firstMark) / MARKS_ON_PAGE);
    if (!Number.isInteger(id) || page < 0 || page >= pages) continue;
    return { paper, page, corners: markedPage(paper, page).marks[(id - firstMark) % MARKS_ON_PAGE]!.corners };
  }
  return null;
}

/** Papers whose own corners serve where no sheet could be printed, mm (ISO 216; ANSI/ASME Y14.1). */
export const PLAIN_PAPERS = {
  A5: { width: 148, height: 210 },
  A4: { width: 210, height: 297 },
  A3: { width: 297, height: 420 },
  A2: { width: 420, height: 594 },
  Letter: { width: 215.9, height: 279.4 },
  Legal: { width: 215.9, height: 355.6 },
  Tabloid: { width: 279.4, height: 431.8 },
} as const;

export type PlainPaper = keyof typeof PLAIN_PAPERS;

/** Corners of a plain paper clockwise from the upper left, mm from its middle, lying upright. */
export function paperCorners(paper: PlainPaper): readonly [Vec2, Vec2, Vec2, Vec2] {
  const [x, y] = [PLAIN_PAPERS[paper].width / 2, PLAIN_PAPERS[paper].height / 2];
  return [
    [-x, y],
    [x, y],
    [x, -y],
    [-x, -y],
  ];
}
