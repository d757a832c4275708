import { Bench } from 'tinybench';
import {
  type Lens,
  markedPage,
  type Photograph,
  pixelOf,
  rotationBy,
  type Standpoint,
  seenFrom,
  solveScene,
  type Vec2,
} from '../src/core/index.ts';
import { faceOfUnknownHeight } from '../src/sight/faceOfUnknownHeight.ts';
import { proposedFace } from '../src/sight/proposedFace.ts';
import { seenMarks } from '../src/sight/seenMarks.ts';
import { seenPaper } from '../src/sight/seenPaper.ts';
import { drawnScene } from '../tests/scenes/drawnScene.ts';
import { takenPhotograph, takenPicture } from '../tests/scenes/takenScene.ts';
import { drawnPicture, pageMaps, pageShade } from '../tests/sight/drawnPicture.ts';
import { printTable } from './table.ts';

const SIZE = { width: 4000, height: 3000 };
const { place } = pageMaps(
  [
    [700, 150],
    [3300, 250],
    [3700, 2850],
    [300, 2700],
  ],
  { width: 297, height: 210 },
);
const shade = pageShade('A4', 0);
// A grained table, on which much looks like an edge.
const picture = drawnPicture({
  ...SIZE,
  place: (at) => {
    const [x, y] = place(at);
    return [-y, x];
  },
  shade: ([x, y]) => shade([x, y]) ?? 0.2 + 0.1 * Math.sin(3 * x + Math.sin(y / 4)) * Math.sin(11 * x + y / 9),
  samples: 2,
  noise: 5,
});

/** Two pages and a book seen by a camera from three places, as `seenMarks` would find them. */
const lens: Lens = { focal: 3000, centre: [2010, 1490], k1: 0.02, k2: -0.01 };
const poses: Standpoint[] = [
  { turn: [0, 0, 0], shift: [0, 0, 700] },
  { turn: [0.6, 0, 0.1], shift: [0, 20, 750] },
  { turn: [0, -0.6, 0], shift: [20, 0, 750] },
];
const photographs = poses.map(({ turn, shift }): Photograph => {
  const rotation = rotationBy(turn);
  const seen = (x: number, y: number, z: number): Vec2 => pixelOf(lens, seenFrom(rotation, shift, [x, y, z]));
  return {
    ...SIZE,
    camera: 'telephone',
    focal: 3100,
    marks: [0, 1].flatMap((page) =>
      markedPage('A4', page).marks.map(({ id, corners }) => ({
        page: `A4 ${page + 1}`,
        mark: String(id),
        corners,
        seen: corners.map(([x, y]) => seen(x + 210 * page - 105, y, 0)),
        u: 0.1,
      })),
    ),
    points: (['-70 100', '70 100', '70 -100', '-70 -100'] as const).map((place, point) => {
      const [x, y] = place.split(' ').map(Number) as [number, number];
      return { point, seen: seen(x, y, 30), u: 0.5 };
    }),
  };
});
const ruler = { value: 1, u: 0.001 };
const print = { size: { value: 1, u: 0.01 }, difference: 0.002, across: ruler, along: ruler };

/** Squares by the thousand, each of which might be a mark. */
const cloth = {
  ...SIZE,
  values: Uint8Array.from({ length: SIZE.width * SIZE.height }, (_, i) =>
    (i % SIZE.width) % 30 < 22 && Math.floor(i / SIZE.width) % 30 < 22 ? 30 : 230,
  ),
};

/** A book on a page, three photographs of 12 megapixel. */
const { scene: drawn, cameras } = drawnScene(5, { kind: 'usual', longSide: 4000 });
const taken = cameras.map((camera) => takenPicture(drawn, camera));
const seen = taken.map((each, i) => takenPhotograph(each, cameras[i]!));
const cameraScene = solveScene(seen, print);
if (!cameraScene.ok) throw new Error(cameraScene.code);
const { views } = cameraScene;
const { thicknessAtSpine, thicknessAtForeEdge } = drawn.book!.book;

const bench = new Bench({ time: 1500 });
bench.add('marks of a page found in a picture of 12 megapixel', () => seenMarks(picture));
bench.add('no mark found on a chequered cloth of 12 megapixel', () => seenMarks(cloth));
bench.add('no paper found on a chequered cloth of 12 megapixel', () => seenPaper(cloth, 'A4'));
bench.add('cameras, two pages of 24 marks and a book solved from three photographs', () => {
  const scene = solveScene(photographs, print, {
    heightOf: [0, 1, 1, 0],
    heights: [
      { value: 25, u: 30 },
      { value: 25, u: 30 },
    ],
  });
  if (!scene.ok) throw new Error(scene.code);
});
// Seconds each: a few rounds tell enough.
const faces = new Bench({ time: 0, iterations: 3, warmup: false });
faces.add('face of a book found in three photographs of 12 megapixel', () =>
  proposedFace(taken, seen, views, [thicknessAtSpine, thicknessAtForeEdge]),
);
faces.add('the same where nobody has typed the thickness', () => faceOfUnknownHeight(taken, seen, views, print));
for (const each of [bench, faces]) {
  await each.run();
  printTable(each);
}
