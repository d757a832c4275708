import { Bench } from 'tinybench';
import { coverDesign, EXAMPLE_JOBS, parseJob } from '../src/core/index.ts';
import type { Hide } from '../src/core/materials/layout/hide.ts';
import { layOut } from '../src/core/materials/layout/layout.ts';
import { layoutFaults } from '../src/core/materials/layout/layoutFaults.ts';
import { type PieceOutline, pieceOutlines, polygonArea } from '../src/core/materials/pieceOutline.ts';
import type { Vec2 } from '../src/core/math/vec2.ts';
import { shelfLayout } from './shelfLayout.ts';
import { printTable } from './table.ts';

const box = (x: number, y: number, width: number, height: number): Vec2[] => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];

/** An invented shoulder, about 1.3 m across the backbone, with a brand, two scars and a hole. */
const shoulder: Hide = {
  outline: Array.from({ length: 48 }, (_, i): Vec2 => {
    const angle = (i * Math.PI) / 24;
    const wave = 1 + 0.09 * Math.cos(4 * angle) + 0.04 * Math.sin(7 * angle);
    return [640 * wave * Math.cos(angle), 420 * wave * Math.sin(angle)];
  }),
  defects: [box(-210, 60, 45, 60), box(160, -190, 70, 14), box(330, 90, 12, 80), box(-40, -40, 16, 16)],
  backbone: Math.PI / 2,
};

const sheet = (width: number, height: number): Hide => ({
  outline: box(0, 0, width, height),
  defects: [],
  backbone: Math.PI / 2,
});

const LEATHERS: readonly (readonly [name: string, hide: Hide])[] = [
  ['sheet 600 x 900', sheet(600, 900)],
  ['sheet 1200 x 600', sheet(1200, 600)],
  ['sheet 900 x 700, backbone across', { ...sheet(900, 700), backbone: 0 }],
  ['shoulder with 4 defects', shoulder],
];
const CLEARANCE = { spacing: 3, edge: 5 };

/** Covers of which the pieces are more than enough for any of these leathers. */
const MANY = 12;

const jobs = EXAMPLE_JOBS.map(({ id, document }) => {
  const parsed = parseJob(document);
  if (!parsed.ok) throw new Error(parsed.issues[0]?.message);
  return { id, outlines: pieceOutlines(coverDesign(parsed.job)) };
});

const times = (outlines: readonly PieceOutline[], sets: number): PieceOutline[] =>
  outlines.map((outline) => ({ ...outline, count: outline.count * sets }));

/** Most whole covers that a way of laying out gets from a hide. */
function covers(outlines: readonly PieceOutline[], laid: (pieces: readonly PieceOutline[]) => number): number {
  const wanted = (sets: number): number => times(outlines, sets).reduce((sum, { count }) => sum + count, 0);
  let sets = 0;
  while (laid(times(outlines, sets + 1)) === wanted(sets + 1)) sets++;
  return sets;
}

const rows: Record<string, object> = {};
for (const { id, outlines } of jobs)
  for (const [name, hide] of LEATHERS) {
    const check = (placed: Parameters<typeof layoutFaults>[0]['placed'], pieces: readonly PieceOutline[]): number => {
      const faults = layoutFaults({ placed, unplaced: [], area: 0, used: 0, yield: 0 }, pieces, hide, CLEARANCE);
      const broken = faults.filter((fault) => !fault.includes('laid or left over'));
      if (broken.length > 0) throw new Error(broken.join('\n'));
      return placed.length;
    };
    const ours = covers(outlines, (pieces) => check(layOut(pieces, hide, CLEARANCE).placed, pieces));
    const shelf = covers(outlines, (pieces) => check(shelfLayout(pieces, hide, CLEARANCE), pieces));
    const share = (sets: number): string => {
      const area = times(outlines, sets).reduce((sum, { count, polygon }) => sum + count * polygonArea(polygon), 0);
      return `${((100 * area) / polygonArea(hide.outline)).toFixed(1)} %`;
    };
    const many = times(outlines, MANY);
    const filled = (placed: readonly { readonly polygon: readonly Vec2[] }[]): string => {
      const area = placed.reduce((sum, { polygon }) => sum + polygonArea(polygon), 0);
      return `${((100 * area) / polygonArea(hide.outline)).toFixed(1)} %`;
    };
    rows[`${id}, ${name}`] = {
      covers: ours,
      'shelf covers': shelf,
      yield: share(ours),
      'shelf yield': share(shelf),
      'filled up': filled(layOut(many, hide, CLEARANCE).placed),
      'shelf filled up': filled(shelfLayout(many, hide, CLEARANCE)),
    };
  }
console.table(rows);

const bench = new Bench({ time: 500 });
for (const { id, outlines } of jobs) {
  bench.add(`${id}, one cover on the shoulder`, () => layOut(outlines, shoulder, CLEARANCE));
  bench.add(`${id}, three covers on the shoulder`, () => layOut(times(outlines, 3), shoulder, CLEARANCE));
}
await bench.run();
printTable(bench);
