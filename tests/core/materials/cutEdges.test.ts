import { describe, expect, test } from 'vitest';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { coverSupplies } from '../../../src/core/materials/coverSupplies.ts';
import { patternDrawing } from '../../../src/core/pattern/patternDrawing.ts';
import { defined } from '../../defined.ts';
import { soundJob } from '../../jobArbitrary.ts';
import { nth } from '../../nth.ts';

const { document: ledger } = nth(EXAMPLE_JOBS, 0);

function edgesOf(change: object) {
  const design = coverDesign(soundJob({ ...ledger, ...change }));
  return { design, drawing: patternDrawing(design), ...coverSupplies(design).edges };
}
type Edges = ReturnType<typeof edgesOf>;
const edge = ({ edges }: Edges, name: string) => defined(edges.find((each) => each.name === name));

describe('the cut edges of a cover', () => {
  test('run round the outside and along both mouths, and add up', () => {
    const all = edgesOf({});
    const { width, height } = all.design.pieces.outside;
    expect(all.edges.map(({ name }) => name)).toEqual(['round the cover', 'pocket mouths']);
    expect(edge(all, 'round the cover').length).toBeCloseTo(2 * (width + height), 9);
    expect(edge(all, 'pocket mouths').length).toBeCloseTo(2 * height, 9);
    expect(all.length).toBeCloseTo(2 * (width + height) + 2 * height, 9);
  });

  test('are shorter round corners: a rounded one by (2 - pi/2) r, a clipped one by (2 - sqrt 2) of its leg', () => {
    const of = (corners: string): number =>
      edge(
        edgesOf({ seam: { method: 'stitching', cornerRadius_mm: 10 }, construction: { corners } }),
        'round the cover',
      ).length;
    expect(of('square') - of('rounded')).toBeCloseTo(4 * 10 * (2 - Math.PI / 2), 9);
    expect(of('square') - of('clipped')).toBeCloseTo(4 * 10 * (2 - Math.SQRT2), 9);
  });

  test('along a curved mouth are longer, as steps along the drawn pocket', () => {
    const all = edgesOf({ construction: { mouth: 'curved' } });
    const { height } = all.design.pieces.outside;
    const pocket = defined(all.drawing.pieces.find(({ id }) => id === 'pocket'));
    const sagitta = 0.15 * all.design.pieces.pocketDepth;
    // The parabola of the same sagitta, as good as the arc to s^4: c + 8 s^2 / (3 c).
    expect(edge(all, 'pocket mouths').length / 2).toBeCloseTo(height + (8 * sagitta ** 2) / (3 * height), 0);
    expect(edge(all, 'pocket mouths').length / 2).toBeGreaterThan(pocket.height);
  });

  test('of turned ends are folds at the fore-edges: head and tail from fold to fold, and the ends of the piece', () => {
    const all = edgesOf({ pockets: { construction: 'turned' } });
    expect(all.edges.map(({ name }) => name)).toEqual(['head and tail', 'pocket mouths']);
    const { width, height } = all.design.pieces.outside;
    const { closed } = all.design.needs.thick;
    const folded = edge(all, 'head and tail').length / 2;
    // From fold to fold the cover is as long as the way round the closed book, within the eases and the turns.
    expect(Math.abs(folded - closed.length)).toBeLessThan(12);
    expect(folded).toBeLessThan(width);
    expect(edge(all, 'pocket mouths').length).toBeCloseTo(2 * height, 9);
  });

  test('go all round a strap, and along a pen loop but for its ends in the seam', () => {
    const all = edgesOf({ construction: { strap: {}, penLoop: { pen_mm: 10, ease_mm: 1 } } });
    const strap = defined(all.drawing.pieces.find(({ id }) => id === 'strap'));
    // A half round end: pi r for 2 r of the box, and two radii less along it on each side.
    const r = strap.height / 2;
    expect(edge(all, 'closure strap').length).toBeCloseTo(2 * strap.width - 2 * r + strap.height + Math.PI * r, 6);
    const { thickness, neutral } = all.design.needs.thick.leathers.outside;
    // Cut to the next half millimetre.
    const round = 2 * Math.PI * (5.5 + neutral * thickness);
    expect(edge(all, 'pen loop').length / 2).toBeGreaterThanOrEqual(round - 1e-9);
    expect(edge(all, 'pen loop').length / 2).toBeLessThan(round + 0.5 + 1e-9);
  });

  test('take paint where they are painted: length x layers x coats', () => {
    expect(edgesOf({}).paint).toBe(0);
    expect(edgesOf({ finish: { edge: 'raw' } }).paint).toBe(0);
    const painted = edgesOf({ finish: { edge: 'painted' }, supplies: { paintFilm_mm: 0.4 } });
    const { outside, pocket } = painted.design.needs.thick.leathers;
    const { thickness } = edge(painted, 'round the cover');
    expect(thickness).toBeGreaterThan(outside.thickness);
    expect(thickness).toBeLessThan(outside.thickness + pocket.thickness);
    expect(edge(painted, 'pocket mouths').thickness).toBe(pocket.thickness);
    const area = painted.edges.reduce((sum, each) => sum + each.length * each.thickness, 0);
    expect(painted.paint).toBeCloseTo((area * 0.4) / 1000, 12);
  });
});
