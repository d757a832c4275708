import { describe, expect, test } from 'vitest';
import type { ToolingDesign } from '../../../src/core/job/toolingSchema.ts';
import type { LetterFace } from '../../../src/core/tooling/letterFace.ts';
import { mostCopies, placedDesign } from '../../../src/core/tooling/placedDesign.ts';
import { toolingAreas } from '../../../src/core/tooling/toolingAreas.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';
import { nearly } from '../pattern/plainSource.ts';
import { plainCover } from './plainCover.ts';

const area = defined(toolingAreas(plainCover()).find(({ face }) => face === 'front'));
const [CX, CY] = area.centre;

/** A letter of one stroke from its base line up to the capital height, 0.5 wide. */
const STICK: LetterFace = {
  id: 'stick',
  title: 'Stick',
  isStroke: true,
  lacks: (text) => [...new Set(text.replaceAll(/[A-Z ]/g, ''))],
  outline: () => ({
    polylines: [
      [
        [0, 0],
        [0.5, 1],
      ],
    ],
    width: 0.5,
  }),
};
const faces = new Map([['stick', STICK]]);

/** An arrow in a box of 100 x 50: from the middle of its left edge to the middle of its right one. */
const ARROW = { id: 'a', name: 'arrow', kind: 'lines' as const, width: 100, height: 50, lines: 'm0,25 100,0' };

function placed(design: object) {
  const job = soundJob({ ...jobWith(design) });
  return placedDesign(nth(job.tooling.designs, 0), area, job.tooling.artworks, faces);
}
const jobWith = (design: object) => ({
  format: 'coverwright-job',
  version: 1,
  book: { width_mm: 150, height_mm: 220, thickness_mm: 30 },
  leather: { outside: { min_mm: 2, max_mm: 2 } },
  tooling: { designs: [{ area: 'front', ...design } as unknown as ToolingDesign], artworks: [ARROW] },
});
const arrow = (change: object) => placed({ kind: 'drawing', artwork: 'a', width_mm: 40, ...change });
const title = (change: object) => placed({ kind: 'title', text: 'AB', height_mm: 10, ...change });

test('of a design with many points as many copies are drawn as a page can bear, the first ones, and it says so', () => {
  const wound = { ...ARROW, id: 'w', lines: `m0,25 ${'1,0 -1,0 '.repeat(999)}1,0` };
  const job = soundJob({
    ...jobWith({ kind: 'drawing', artwork: 'w', repeat: { columns: 40, rows: 40 } }),
    tooling: {
      designs: [{ area: 'front', kind: 'drawing', artwork: 'w', repeat: { columns: 40, rows: 40 } }],
      artworks: [wound],
    },
  });
  const { lines, lacking } = placedDesign(nth(job.tooling.designs, 0), area, job.tooling.artworks, faces);
  // 200,000 points of 2,000 each.
  expect(lines).toHaveLength(100);
  expect(lacking).toEqual(['100 of its 1600 copies are drawn, the most for so many points']);
  expect(arrow({ repeat: { columns: 40, rows: 40 } }).lines).toHaveLength(1600);
  expect(mostCopies(1_000_000)).toBe(1);
});

describe('a drawing', () => {
  test('stands with its middle on the centre lines, as wide as its field says', () => {
    expect(arrow({}).lines).toEqual([
      nearly([
        [CX - 20, CY],
        [CX + 20, CY],
      ]),
    ]);
  });
  test('is moved from the centre lines, to the right and up', () => {
    expect(arrow({ x_mm: 5, y_mm: -7 }).lines).toEqual([
      nearly([
        [CX - 15, CY - 7],
        [CX + 25, CY - 7],
      ]),
    ]);
  });
  test('is turned counterclockwise, and mirrored before that', () => {
    expect(arrow({ turn_deg: 90 }).lines).toEqual([
      nearly([
        [CX, CY - 20],
        [CX, CY + 20],
      ]),
    ]);
    expect(arrow({ turn_deg: 90, mirrored: true }).lines).toEqual([
      nearly([
        [CX, CY + 20],
        [CX, CY - 20],
      ]),
    ]);
  });
  test('is repeated about its place, rows from the top down', () => {
    const { lines } = arrow({ repeat: { columns: 2, rows: 2, stepX_mm: 50, stepY_mm: 30 } });
    expect(lines.map((line) => nth(line, 0))).toEqual([
      nearly([CX - 45, CY + 15]),
      nearly([CX + 5, CY + 15]),
      nearly([CX - 45, CY - 15]),
      nearly([CX + 5, CY - 15]),
    ]);
  });
});

describe('a title', () => {
  test('stands about the middle of its capitals and of its width', () => {
    expect(title({}).lines).toEqual([
      nearly([
        [CX - 2.5, CY - 5],
        [CX + 2.5, CY + 5],
      ]),
    ]);
  });
  test('read down the spine has the heads of its letters toward the front, which is on the right', () => {
    expect(title({ reading: 'down' }).lines).toEqual([
      nearly([
        [CX - 5, CY + 2.5],
        [CX + 5, CY - 2.5],
      ]),
    ]);
    expect(title({ reading: 'up' }).lines).toEqual([
      nearly([
        [CX + 5, CY - 2.5],
        [CX - 5, CY + 2.5],
      ]),
    ]);
  });
  test('names the letters that its face lacks, and a face that is not there', () => {
    expect(title({ text: 'Añ' }).lacking).toEqual(['Stick has no letter for ñ']);
    expect(title({ face: 'lost' }).lacking).toEqual(['its letters are not loaded']);
  });
});
