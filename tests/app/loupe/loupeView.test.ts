import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sectionNote } from '../../../src/app/loupe/edgeWords.ts';
import { loupeView, PX_PER_MM } from '../../../src/app/loupe/loupeView.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EDGES } from '../../../src/core/fold/edges.ts';
import { edgeSection } from '../../../src/core/fold/section/edgeSection.ts';
import { RANGE_POINTS } from '../../../src/core/leather/leatherModel.ts';
import { coverOf } from '../../core/pattern/coverOf.ts';
import { jobDocument, soundJob } from '../../jobArbitrary.ts';
import { checkLaw } from '../../laws.ts';

const edges = fc.constantFrom(...EDGES);
const points = fc.constantFrom(...RANGE_POINTS);
const sizes = fc.constantFrom(112, 186, 240);

describe('the view through the glass', () => {
  test('a length is drawn as many times larger as is said, across and along', () => {
    checkLaw(
      fc.property(jobDocument, edges, sizes, (document, edge, size) => {
        const view = loupeView(coverDesign(soundJob(document)), edge, size);
        const [[x, y], [right, up]] = [view.place([0, 0]), view.place([10, 10])];
        // 96 px an inch is the definition of the CSS pixel (CSS Values and Units, level 3, section 5.2).
        expect(right - x).toBeCloseTo((10 * view.magnification * 96) / 25.4, 9);
        expect(y - up).toBeCloseTo((10 * view.magnification * 96) / 25.4, 9);
      }),
    );
  });

  test('board edge, stop and seam are in the glass at every thickness, and the view stays as the thickness changes', () => {
    checkLaw(
      fc.property(jobDocument, edges, points, sizes, (document, edge, point, size) => {
        const design = coverDesign(soundJob(document));
        const view = loupeView(design, edge, size);
        const { gap, seam, board } = edgeSection(design, edge, point, 1);
        const low = Math.min(...board.map(([, v]) => v));
        const spots = [0, gap ?? 0, seam?.at ?? 0].flatMap((u) => [view.place([u, 0]), view.place([u, low])]);
        if (view.magnification === 0.1) return;
        for (const [x, y] of spots) expect(Math.hypot(x - size / 2, y - size / 2)).toBeLessThan(size / 2);
      }),
    );
  });

  test('an overrun longer than the glass is made smaller, and said so', () => {
    const short = coverOf({ pattern: { outsideWidth_mm: 320 } });
    const view = loupeView(short, 'backForeEdge', 186);
    expect(view.magnification).toBeLessThan(2);
    expect(186 / (view.magnification * PX_PER_MM)).toBeGreaterThan(20);
  });
});

test('the note says what is not to be seen: no pocket, an overrun, a corner, where the spare wrap is', () => {
  const noteOf = (design: ReturnType<typeof coverOf>, edge: (typeof EDGES)[number], along: number): string =>
    sectionNote(design, edge, edgeSection(design, edge, 'thick', along));
  const cover = coverOf({});
  expect(noteOf(cover, 'head', 0)).toContain('No pocket');
  expect(noteOf(cover, 'head', 1)).toContain('corner');
  expect(noteOf(cover, 'frontForeEdge', 0.5)).toContain('pushed home');
  expect(noteOf(coverOf({ seating: 'spine' }), 'frontForeEdge', 0.5)).toContain('at the spine');
  expect(noteOf(coverOf({ pattern: { outsideHeight_mm: 250 } }), 'tail', 0.9)).toContain('Too small');
});
