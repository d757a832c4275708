import { KNIFE } from '../job/workOrder.ts';
import { TEST_STRIPS, type TestStrip } from '../leatherTest/testStrip.ts';
import { rectangle } from '../math/contour.ts';
import type { LengthUnit } from '../units/parseLength.ts';
import { doubleArrow } from './arrow.ts';
import { type Drawing, line, noLayers, type PieceDrawing, path } from './drawing.ts';
import { letteringOn, type Word } from './lettering.ts';

/** Half a cross of a mark, mm. */
const CROSS = 3;
const LETTER = 7;
const WORDS = 2.8;
const UPRIGHT = Math.PI / 2;

const TESTS: Readonly<Record<TestStrip['test'], string>> = {
  fold: 'hard fold, and round a block',
  droop: 'droop over an edge',
  change: 'change of size',
  crease: 'how creases stay',
};

/**
 * The strips of the four tests of a leather, in true size: outlines, folds, marks, and which way each lies on the hide.
 * @param leather its name; '' for any
 */
export const testStripDrawing = (units: LengthUnit, leather: string): Drawing => ({
  title: `Strips for testing ${leather.trim() || 'a leather'}`,
  units,
  faceUp: 'grain side up',
  pieces: TEST_STRIPS.map(stripPiece),
  lengths: [],
  holes: 0,
  notes: [
    'Cut them from one hide, away from its edges. Two of each letter at least: no two strips are quite alike.',
    'Pencil letter and arrow on each strip, grain side, before it leaves the hide. Prick the crosses of E and F through with an awl.',
    `${KNIFE} Awl: work over a board, never toward the palm.`,
  ],
});

function stripPiece(strip: TestStrip): PieceDrawing {
  const { letter, test, way, length, width, folds, bends, edges, marks } = strip;
  const outline = rectangle([0, 0], [length, width]);
  const across = (x: number) => line([x, 0], [x, width]);
  const middle = width / 2;
  const layers = noLayers();
  layers.cut.push(path(outline, true));
  layers.fold.push(...folds.map(across));
  layers.mark.push(
    ...[...bends, ...edges].map(across),
    ...marks.flatMap((x) => [
      line([x - CROSS, middle], [x + CROSS, middle]),
      line([x, middle - CROSS], [x, middle + CROSS]),
    ]),
  );
  const [long, angle] = way === 'along' ? [0.28 * length, 0] : [0.7 * width, UPRIGHT];
  layers.direction.push(...doubleArrow([arrowAt(strip), middle], long, angle));
  const lettering = letteringOn({ outline, width: length, height: width, layers });
  const words: Word[] = [
    [letter, [6, middle], LETTER],
    ...folds.map((x): Word => ['fold', [x + 3, middle], WORDS, UPRIGHT, 'fold']),
    ...bends.map((x): Word => ['block', [x + 3, middle], WORDS, UPRIGHT, 'mark']),
    ...edges.map((x): Word => ['edge of the table', [x + 3, middle], WORDS, UPRIGHT, 'mark']),
    [TESTS[test], [length / 2, width - 4], WORDS],
    [`${way} the hide's backbone`, [length / 2, 4], WORDS],
  ];
  layers.text.push(...words.flatMap((word) => lettering.word(...word)));
  return {
    id: `testStrip${letter}`,
    name: `Strip ${letter}`,
    count: 2,
    width: length,
    height: width,
    outline,
    layers,
    sums: [],
    holes: 0,
    unwritten: lettering.unwritten,
  };
}

/** Where the middle of the arrow stands, clear of the letter and of the lines across, mm. */
const arrowAt = ({ folds, bends, length }: TestStrip): number => {
  const [fold = length / 2] = folds;
  const [bend] = bends;
  return bend === undefined ? fold / 2 + length / 20 : (fold + bend) / 2;
};
