import { expect, test } from 'vitest';
import { type BookPhotographs, measuredBook } from '../../src/core/photograph/bookMeasures.ts';
import { MARKED_PAPERS } from '../../src/core/photograph/markedSheet.ts';
import { printScale } from '../../src/core/photograph/printScale.ts';
import { SCENE_DOUBTS } from '../../src/core/photograph/scene.ts';
import {
  type Draws,
  draws,
  photographed,
  standpointsRound,
  type TruePage,
  type TrueScene,
} from '../core/photograph/photographed.ts';
import { LAW_SEED } from '../laws.ts';
import { isWholeProof, proofSize } from './proofSize.ts';

/** What was found of one book, by path: off by, stated uncertainty, and the part of it that the print has. */
interface Outcome {
  readonly misfit: number;
  readonly off: Readonly<
    Record<string, { readonly off: number; readonly u: number; readonly uPrint: number; readonly uRest: number }>
  >;
}

/** Standard uncertainties with which truth and readings are drawn; those of camera and sheet are what the solver assumes. */
const DRAWN = { ruler: 0.25, thickness: 0.3, mark: 0.25, corner: 0.6, unchecked: 0.01, difference: 0.002 } as const;

/** Pages side by side under a book, as many as leave marks in sight all round, with gaps and turns. */
function pagesUnder(width: number, height: number, { normal, between }: Draws): TruePage[] {
  const { width: across, height: along } = MARKED_PAPERS.A4;
  const columns = width > 120 ? 2 : 1;
  const rows = height > 210 ? 2 : 1;
  const scale = 1 + DRAWN.unchecked * normal();
  const apart = DRAWN.difference * normal();
  return Array.from({ length: columns * rows }, (_, page) => {
    const [column, row] = [page % columns, Math.floor(page / columns)];
    const curl = [0, 1, 2].map(() => SCENE_DOUBTS.curl * normal()) as [number, number, number];
    const lifts = new Map<number, number>();
    const placement = {
      at: [
        (column - (columns - 1) / 2) * (across + between(0, 4)) + normal(),
        (row - (rows - 1) / 2) * (along + between(0, 4)) + normal(),
      ],
      angle: 0.015 * normal(),
    } as const;
    return {
      paper: 'A4',
      page,
      placement,
      across: scale + apart / 2,
      along: scale - apart / 2,
      height: ([x, y], mark) => {
        const lift = lifts.get(mark) ?? SCENE_DOUBTS.lift * normal();
        lifts.set(mark, lift);
        const [a, b] = [x / 150, y / 150];
        return curl[0] * a * a + curl[1] * a * b + curl[2] * b * b + lift;
      },
    };
  });
}

function measured(seed: number, count: number): Outcome {
  const draw = draws(seed);
  const { normal, between } = draw;
  const book = { width: between(95, 250), height: between(140, 330), thickness: between(5, 70) };
  const [x, y, z] = [book.width / 2, book.height / 2, book.thickness];
  const pages = pagesUnder(book.width + book.thickness / 2, book.height + book.thickness / 2, draw);
  const focal = 3200;
  const isLarge = pages.length > 2;
  const scene: TrueScene = {
    lens: {
      focal: focal * Math.exp(SCENE_DOUBTS.focal * normal()),
      centre: [2000 + 4000 * SCENE_DOUBTS.centre * normal(), 1500 + 4000 * SCENE_DOUBTS.centre * normal()],
      k1: SCENE_DOUBTS.distortion * normal(),
      k2: SCENE_DOUBTS.distortion * normal(),
    },
    standpoints: standpointsRound(count, isLarge ? 900 : 700, draw),
    pages,
    points: [
      [-x, y, z],
      [x, y, z],
      [x, -y, z],
      [-x, -y, z],
    ],
    hides: ([p, q]) => Math.abs(p) < x + 0.5 * z && Math.abs(q) < y + 0.5 * z,
    width: 4000,
    height: 3000,
    focal,
    uMark: DRAWN.mark,
    uPoint: DRAWN.corner,
  };
  const [page] = pages as [TruePage];
  const readings = {
    across: 190 * page.across + DRAWN.ruler * normal(),
    along: 280 * page.along + DRAWN.ruler * normal(),
  };
  const input: BookPhotographs = {
    lying: photographed(scene, draw),
    standing: [],
    print: printScale('A4', readings, DRAWN.ruler),
    thickness: { value: z + DRAWN.thickness * normal(), u: DRAWN.thickness },
    foreEdgeThickness: null,
    height: null,
    isParallel: true,
  };
  const { measures, lying } = measuredBook(input);
  const truth: Readonly<Record<string, number>> = {
    'book.width_mm': book.width,
    'book.height_mm': book.height,
    'book.thickness_mm': book.thickness,
  };
  return {
    misfit: lying?.ok === true ? lying.misfit : Number.NaN,
    off: Object.fromEntries(
      measures.map(({ path, value, u, uPrint }) => [
        path,
        { off: value - truth[path]!, u, uPrint, uRest: Math.sqrt(u * u - uPrint * uPrint) },
      ]),
    ),
  };
}

const COUNT = proofSize(1000, 40);
const [LEAST, MOST] = isWholeProof ? [0.93, 0.97] : [0.8, 1];

test.each([1, 2, 3])(
  `errors of ${COUNT} books by geometry alone lie within the stated 95 in 100 as often as that, by %i photographs`,
  (count) => {
    if (!isWholeProof && count === 2) return;
    const outcomes = Array.from({ length: COUNT }, (_, i) => measured(LAW_SEED + 7919 * i + count, count));
    const paths = ['book.width_mm', 'book.height_mm', 'book.thickness_mm'];
    const shares = paths.map(
      (path) => outcomes.filter(({ off }) => Math.abs(off[path]!.off) <= 1.96 * off[path]!.u).length / COUNT,
    );
    const widths = outcomes.map(({ off }) => Math.abs(off['book.width_mm']!.off)).sort((a, b) => a - b);
    const at95 = widths[Math.ceil(0.95 * COUNT) - 1]!;
    const middle = (pick: 'uPrint' | 'uRest'): number =>
      outcomes.map(({ off }) => off['book.width_mm']![pick]).sort((a, b) => a - b)[Math.floor(COUNT / 2)]!;
    console.log(
      `${count} photographs, ${COUNT} books: within the stated 95 %: width ${shares[0]}, height ${shares[1]}, thickness ${shares[2]}; ` +
        `width within ${at95.toFixed(2)} mm in 95 of 100; doubt of the width ${middle('uRest').toFixed(3)} mm, of the print beside ${middle('uPrint').toFixed(3)} mm`,
    );
    for (const share of shares) {
      expect(share).toBeGreaterThanOrEqual(LEAST);
      expect(share).toBeLessThanOrEqual(MOST);
    }
    if (count === 3) expect(at95).toBeLessThanOrEqual(0.6);
  },
);
