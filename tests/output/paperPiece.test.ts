import { describe, expect, test } from 'vitest';
import { flattened } from '../../src/core/math/contour.ts';
import { distance, type Vec2 } from '../../src/core/math/vec2.ts';
import { LAYERS } from '../../src/core/pattern/drawing.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { LAYER_STYLES } from '../../src/output/layerStyle.ts';
import { paperPiece } from '../../src/output/pdf/paperPiece.ts';
import { coverOf } from '../core/pattern/coverOf.ts';
import { nth } from '../nth.ts';
import { toChain } from './outlineDistance.ts';

const JOBS = {
  laced: coverOf(),
  stitched: coverOf({ seam: { method: 'stitching', style: 'saddle', cornerRadius_mm: 12 } }),
  turned: coverOf({ pockets: { construction: 'turned' } }),
};

/** A dot of a print at 300 dpi, mm. */
const DOT = 25.4 / 300;

describe.each(Object.entries(JOBS))('a piece on paper, %s', (_, design) => {
  test('has its seam line interrupted round every hole, by at least 0.4 mm, and drawn between', () => {
    for (const before of patternDrawing(design).pieces) {
      const piece = paperPiece(before);
      const chains = piece.layers.seam.map((entity) =>
        entity.kind === 'path' ? flattened(entity.segments, 0.001) : [],
      );
      for (const hole of piece.layers.hole) {
        const points: Vec2[] = hole.kind === 'line' ? [hole.from, hole.to] : hole.kind === 'arc' ? [hole.centre] : [];
        const reach = hole.kind === 'arc' ? hole.radius : 0;
        for (const point of points)
          for (const chain of chains) expect(toChain(point, chain) - reach).toBeGreaterThan(0.4);
      }
      const length = (all: readonly (readonly Vec2[])[]): number =>
        all.reduce(
          (sum, chain) => sum + chain.slice(1).reduce((part, point, i) => part + distance(nth(chain, i), point), 0),
          0,
        );
      const whole = before.layers.seam.map((entity) =>
        entity.kind === 'path' ? flattened(entity.segments, 0.001) : [],
      );
      if (whole.length > 0) expect(length(chains)).toBeGreaterThan(0.2 * length(whole));
    }
  });

  test('has a tick across each end of a slit, and every hole as it was', () => {
    for (const before of patternDrawing(design).pieces) {
      const piece = paperPiece(before);
      expect(piece.layers.hole).toEqual(before.layers.hole);
      const slits = piece.layers.hole.filter((entity) => entity.kind === 'line');
      expect(piece.layers.mark.length).toBe(before.layers.mark.length + 2 * slits.length);
    }
  });
});

test('every line of a pattern is two dots wide or more at 300 dpi in black, and no two layers have one look without colour', () => {
  const looks = LAYERS.filter((layer) => layer !== 'text').map((layer) => {
    const { width, dash, ink } = LAYER_STYLES[layer];
    expect([layer, width >= 2 * DOT]).toEqual([layer, true]);
    // Lighter ink is printed as scattered dots, which break a thin line up.
    expect([layer, Math.max(...ink) <= 60]).toEqual([layer, true]);
    return { layer, look: `${dash.join(' ')}` };
  });
  const dashed = looks.filter(({ look }) => look !== '');
  expect(new Set(dashed.map(({ look }) => look)).size).toBe(dashed.length);
});
