import { DOMParser, type Element } from '@xmldom/xmldom';
import { areaD } from 'clipper2-ts';
import { svgPathProperties } from 'svg-path-properties';
import { describe, expect, test } from 'vitest';
import { contourArea, flattened } from '../../src/core/math/contour.ts';
import type { Vec2 } from '../../src/core/math/vec2.ts';
import { patternDrawing } from '../../src/core/pattern/patternDrawing.ts';
import { patternSvg } from '../../src/output/svg/patternSvg.ts';
import { coverOf } from '../core/pattern/coverOf.ts';
import { defined } from '../defined.ts';
import { nth } from '../nth.ts';
import { apart, boundsOf, moved } from './outlineDistance.ts';

const design = coverOf({
  name: 'Tide "ledger" <1> & co',
  leather: { lining: { min_mm: 0.7, max_mm: 0.8 } },
  seam: { cornerRadius_mm: 12 },
  construction: { mouth: 'curved', strap: {} },
});
const drawing = patternDrawing(design);

const parsed = (svg: string): Element => {
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  if (root === null) throw new Error('no root');
  return root;
};
const groups = (root: Element, name: string): Element[] =>
  Array.from(root.getElementsByTagName('g')).filter((group) => group.getAttribute('class') === name);
const pieceGroup = (root: Element, id: string): Element =>
  defined(Array.from(root.getElementsByTagName('g')).find((group) => group.getAttribute('id') === id));

/** Points along a path as an independent reader places them, every corner among them; y turned up again. */
function pointsOf(d: string, count = 400): Vec2[] {
  const parts = new svgPathProperties(d).getParts();
  const points = parts.flatMap((part) =>
    Array.from({ length: count }, (_, i) => part.getPointAtLength((part.length * i) / count)),
  );
  return [...points, nth(points, 0)].map(({ x, y }) => [x, -y]);
}

/** Written again in every test, so that each is independent. */
const written = (): Element => parsed(patternSvg(drawing));

describe('the SVG of a pattern, read back', () => {
  test('is sized in millimetres, one unit of its view box each', () => {
    const root = written();
    const [, , width, height] = defined(root.getAttribute('viewBox')).split(' ').map(Number);
    expect(root.getAttribute('width')).toBe(`${width}mm`);
    expect(root.getAttribute('height')).toBe(`${height}mm`);
    expect(width).toBe(design.pieces.outside.width + 20);
  });

  test('has every outline, within 0.01 mm', () => {
    const root = written();
    for (const piece of drawing.pieces) {
      for (let copy = 1; copy <= piece.count; copy++) {
        const group = pieceGroup(root, piece.count === 1 ? piece.id : `${piece.id}-${copy}`);
        const [path] = groups(group, 'cut').flatMap((each) => Array.from(each.getElementsByTagName('path')));
        const points = pointsOf(defined(path!.getAttribute('d')));
        const { low } = boundsOf(points);
        expect(apart(moved(points, [-low[0], -low[1]]), flattened(piece.outline, 1e-3))).toBeLessThan(0.01);
      }
    }
  });

  test('has the area of every piece, as a polygon library counts it', () => {
    const root = written();
    for (const piece of drawing.pieces) {
      const group = pieceGroup(root, piece.count === 1 ? piece.id : `${piece.id}-1`);
      const [path] = groups(group, 'cut').flatMap((each) => Array.from(each.getElementsByTagName('path')));
      const points = pointsOf(defined(path!.getAttribute('d')), 2000).map(([x, y]) => ({ x, y }));
      const area = Math.abs(areaD(points));
      expect(Math.abs(area / contourArea(piece.outline) - 1)).toBeLessThan(1e-6);
    }
  });

  test('has each layer as a group, and every slit', () => {
    const root = written();
    const slits = groups(pieceGroup(root, 'outside'), 'slit');
    expect(slits.length).toBe(1);
    expect(nth(slits, 0).getElementsByTagName('path').length).toBe(nth(drawing.pieces, 0).holes);
    for (const layer of ['cut', 'fold', 'seam', 'book', 'centre', 'direction', 'mark', 'text'])
      expect([layer, groups(pieceGroup(root, 'outside'), layer).length]).toEqual([layer, 1]);
  });

  test('keeps a name with the special characters of XML', () => {
    const root = written();
    expect(nth(root.getElementsByTagName('title'), 0).textContent).toBe('Tide "ledger" <1> & co');
  });
});

test('stitching holes are circles of their diameter', () => {
  const stitched = coverOf({ seam: { method: 'stitching', style: 'saddle', edgeMargin_mm: 4, pitch_mm: 4 } });
  const root = parsed(patternSvg(patternDrawing(stitched)));
  const circles = Array.from(nth(groups(pieceGroup(root, 'outside'), 'hole'), 0).getElementsByTagName('circle'));
  expect(circles.length).toBe(nth(patternDrawing(stitched).pieces, 0).holes);
  expect(new Set(circles.map((each) => each.getAttribute('r')))).toEqual(new Set(['0.5']));
});

test('only the layers asked for are drawn', () => {
  const root = parsed(patternSvg(drawing, { layers: ['cut', 'hole'] }));
  expect(groups(root, 'text').length).toBe(0);
  expect(groups(root, 'cut').length).toBe(drawing.pieces.reduce((sum, { count }) => sum + count, 0));
});

test('the description of the file carries the cautions for a laser, with a kerf and without', () => {
  for (const options of [{}, { kerf_mm: 0.2 }]) {
    const [desc] = parsed(patternSvg(drawing, options)).getElementsByTagName('desc');
    expect(desc!.textContent).toMatch(/never cut PVC.*hydrogen chloride.*chromium.*local rules/);
  }
});
