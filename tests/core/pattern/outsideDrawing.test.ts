import { describe, expect, test, vi } from 'vitest';
import { type Arc, segmentEnd, segmentStart } from '../../../src/core/math/contour.ts';
import type { PieceDrawing } from '../../../src/core/pattern/drawing.ts';
import { letteredPiece } from '../../../src/core/pattern/letteredPiece.ts';
import { outsideDrawing } from '../../../src/core/pattern/outsideDrawing.ts';
import { penLoopOf } from '../../../src/core/pattern/penLoop.ts';
import type { PatternSource } from '../../../src/core/pattern/seam.ts';
import { seamHoles } from '../../../src/core/pattern/seamHoles.ts';
import { strapOf } from '../../../src/core/pattern/strap.ts';
import { printer } from '../../../src/core/units/printer.ts';
import type { Change } from './coverOf.ts';
import { cornersOf, nearly, placesOf, plainSource, series, TURNED } from './plainSource.ts';

vi.mock('../../../src/core/pattern/letteredPiece.ts', { spy: true });

const drawn = (source: PatternSource): PieceDrawing => {
  const seam = seamHoles(source);
  return outsideDrawing(source, seam, strapOf(source), penLoopOf(source, seam), printer('mm'));
};
const outside = (change: Change = {}): PieceDrawing => drawn(plainSource(change));

/** What the piece asked to have written on it, and where. */
const lettering = (change: Change = {}) => {
  vi.mocked(letteredPiece).mockClear();
  outside(change);
  const [, , lines, box, words = []] = vi.mocked(letteredPiece).mock.lastCall!;
  return { lines, box, words };
};

describe('the cut edge of the outside', () => {
  test('is its rectangle, drawn once and closed', () => {
    const { layers, outline } = outside();
    expect(layers.cut).toEqual([{ kind: 'path', segments: outline, isClosed: true }]);
    expect(cornersOf(layers.cut[0])).toEqual([
      [0, 0],
      [360, 0],
      [360, 228],
      [0, 228],
    ]);
  });

  test('has the corners of the job', () => {
    const { outline } = outside({ seam: { cornerRadius_mm: 10 } });
    const arcs = outline.filter((segment): segment is Arc => segment.kind === 'arc');
    expect(arcs.map(({ centre, radius }) => [...centre, radius])).toEqual([
      [10, 10, 10],
      [350, 10, 10],
      [350, 218, 10],
      [10, 218, 10],
    ]);
  });

  test('of turned ends is their mouths: straight, or scooped inward by 0.2 of 50 mm', () => {
    expect(outside(TURNED).outline.map(segmentStart)).toEqual([
      [0, 0],
      [460, 0],
      [460, 228],
      [0, 228],
    ]);
    const { outline } = outside({ ...TURNED, construction: { mouth: 'curved', mouthCurve: 0.2 } });
    expect(outline.map(({ kind }) => kind)).toEqual(['line', 'arc', 'line', 'arc']);
    expect(outline.map(segmentEnd)).toEqual(
      nearly([
        [460, 0],
        [460, 228],
        [0, 228],
        [0, 0],
      ]),
    );
    expect(outline.map(segmentStart)).toEqual(
      nearly([
        [0, 0],
        [460, 0],
        [460, 228],
        [0, 228],
      ]),
    );
    // c = 228, s = 10: R = 228^2 / 80 + 5 = 654.8, its centre 644.8 outside the chord.
    const [right, left] = outline.filter((segment): segment is Arc => segment.kind === 'arc');
    expect([right!.centre, right!.radius]).toEqual(nearly([[460 + 644.8, 114], 654.8]));
    expect([left!.centre, left!.radius]).toEqual(nearly([[-644.8, 114], 654.8]));
  });
});

describe('the seam on the outside', () => {
  test('runs a margin inside the edge, closed', () => {
    const { layers } = outside();
    expect(layers.seam).toHaveLength(1);
    expect(layers.seam[0]).toMatchObject({ kind: 'path', isClosed: true });
    expect(new Set(cornersOf(layers.seam[0]).map(String))).toEqual(new Set(['4,4', '356,4', '356,224', '4,224']));
  });

  test('has a hole every 4 mm on it', () => {
    const { layers, holes } = outside();
    const sides = [
      ...series(4, 4, 89).flatMap((x) => [`${x},4`, `${x},224`]),
      ...series(8, 4, 54).flatMap((y) => [`4,${y}`, `356,${y}`]),
    ];
    expect(holes).toBe(286);
    expect(new Set(placesOf(layers.hole).map((at) => at.map((x) => Math.round(x * 1e6) / 1e6).join()))).toEqual(
      new Set(sides),
    );
  });

  test('is seen from the grain side: the front is at the right, where the seam starts at the left', () => {
    const { layers } = outside();
    // The back pocket spans 58 mm. Its first hole stands at 56; two holes on the seam starts, and it finishes one before.
    const from = placesOf(layers.mark).filter(([x, , to]) => x === to);
    expect(from).toContainEqual(nearly([48, 5.2, 48, 17]));
    expect(from).toContainEqual(nearly([52, 5.2, 52, 13]));
    const { words } = lettering();
    expect(words).toContainEqual(nearly(['start', [52.5, 16], 2.5, 0, 'mark']));
    expect(words).toContainEqual(nearly(['finish', [56.5, 12], 2.5, 0, 'mark']));
  });

  test('of turned ends starts and finishes at their folds, marked inward from head and tail', () => {
    const { layers } = outside(TURNED);
    // The rows are inset by 53.25 + 4 = 57.25.
    expect(layers.seam).toHaveLength(2);
    for (const [i, line] of layers.seam.entries()) {
      expect(line).toMatchObject({ isClosed: false });
      const y = i === 0 ? 4 : 224;
      expect(new Set(cornersOf(line).map(([, at]) => at))).toEqual(new Set([y]));
    }
    const marks = placesOf(layers.mark);
    expect(marks).toEqual(
      expect.arrayContaining(
        nearly([
          [402.75, 5.2, 402.75, 17],
          [57.25, 222.8, 57.25, 211],
          [57.25, 5.2, 57.25, 13],
          [402.75, 222.8, 402.75, 215],
        ]),
      ),
    );
    const { words } = lettering(TURNED);
    expect(words.filter(([text]) => text === 'start' || text === 'finish')).toEqual(
      nearly([
        ['start', [398.25, 16], 2.5, 0, 'mark'],
        ['start', [61.75, 212], 2.5, 0, 'mark'],
        ['finish', [61.75, 12], 2.5, 0, 'mark'],
        ['finish', [398.25, 216], 2.5, 0, 'mark'],
      ]),
    );
  });

  test('has the holes of a turned end twice, mirrored in the middle of its fold', () => {
    const { layers } = outside(TURNED);
    const places = placesOf(layers.hole);
    const below = places.filter(([, y]) => y === 4).map(([x]) => x!);
    const front = below.filter((x) => x > 460 - 53.25).sort((a, b) => a - b);
    const back = below.filter((x) => x < 53.25).sort((a, b) => a - b);
    // The first hole stands 4 mm from the fold on either side, the last before the mouth, at 106.5 less 0.3 of a pitch.
    expect(front[0]).toBeCloseTo(460 - 53.25 + 4, 9);
    expect(back.at(-1)).toBeCloseTo(53.25 - 4, 9);
    const mirrored = below.filter((x) => x > 460 - 106.5 + 1.3 && x < 460 - 53.25);
    expect(front).toEqual(nearly(mirrored.map((x) => 2 * (460 - 53.25) - x).sort((a, b) => a - b)));
    expect(back).toEqual(nearly(front.map((x) => 460 - x).sort((a, b) => a - b)));
    expect(places.filter(([, y]) => y === 224)).toHaveLength(below.length);
  });
});

describe('the places of the book on the outside', () => {
  test('are folds in the middle of the bends, at 164 and 196', () => {
    expect(placesOf(outside().layers.fold)).toEqual(
      nearly([
        [196, 0, 196, 228],
        [164, 0, 164, 228],
      ]),
    );
  });

  test('and in turned ends both lines of each turn', () => {
    const upright = placesOf(outside(TURNED).layers.fold).slice(2);
    expect(upright).toEqual(nearly([410, 50, 403.5, 56.5].map((x) => [x, 0, x, 228])));
  });

  test('have the middle of the spine', () => {
    expect(placesOf(outside().layers.centre)).toEqual([[180, 0, 180, 228]]);
  });

  test('show both boards 13 mm from the ends, lower by half of what the head has more ease', () => {
    const { layers } = outside({ ease: { head_mm: 3 } });
    expect(layers.book.map((board) => (board.kind === 'path' ? board.isClosed : null))).toEqual([true, true]);
    expect(layers.book.map((board) => cornersOf(board))).toEqual(
      nearly(
        [
          [197, 347],
          [13, 163],
        ].map(([from, to]) => [
          [from!, 3],
          [to!, 3],
          [to!, 223],
          [from!, 223],
        ]),
      ),
    );
  });

  test('are hatched where the leather is skived, 3 mm beyond each bend', () => {
    // Skived to 1 mm a fold takes 1 mm: 150 + 1 + 30 + 1 + 150, from 14 mm on; the bends are 164 to 165 and 195 to 196.
    const skived = (foldThickness_mm: number) => outside({ leather: { outside: { foldThickness_mm } } }).layers.skive;
    const zone = (from: number, to: number) => ({
      kind: 'hatch',
      boundary: [
        [from, 0],
        [to, 0],
        [to, 228],
        [from, 228],
      ],
      angle: Math.PI / 4,
      spacing: 3,
    });
    expect(skived(1)).toEqual(nearly([zone(192, 199), zone(161, 168)]));
    expect(skived(2)).toEqual([]);
    expect(outside().layers.skive).toEqual([]);
  });
});

describe('notches on the outside', () => {
  const notches = (change: Change) => placesOf(outside(change).layers.mark).filter(([, y]) => y === 0 || y === 228);

  test('show where each mouth ends, one and a half margins long', () => {
    expect(notches({})).toEqual(
      nearly([
        [302, 0, 302, 6],
        [302, 228, 302, 222],
        [58, 0, 58, 6],
        [58, 228, 58, 222],
      ]),
    );
  });

  test('show no end of a lining', () => {
    const lined = plainSource({ leather: { lining: { min_mm: 1, max_mm: 1 } } });
    expect(seamHoles(lined).steps).toHaveLength(4);
    expect(drawn(lined).layers.mark).toHaveLength(outside().layers.mark.length);
  });
});

describe('words on the outside', () => {
  test('stand on the boards and at the spine, 20 mm from head and tail', () => {
    const { words } = lettering();
    expect(words.slice(-4)).toEqual(
      nearly([
        ['back', [88, 21], 3.5],
        ['front', [272, 21], 3.5],
        ['head', [186, 206.5], 3.5],
        ['tail', [186, 21], 3.5],
      ]),
    );
  });

  test('keep within a quarter of a low outside', () => {
    const { words } = lettering({ book: { height_mm: 40 }, pattern: { outsideHeight_mm: 48 } });
    expect(words.slice(-2)).toEqual(
      nearly([
        ['head', [186, 34.5], 3.5],
        ['tail', [186, 13], 3.5],
      ]),
    );
  });

  test('name the piece on the back board, with its holes and sums', () => {
    const { lines, box } = lettering();
    expect(lines[0]).toBe('286 holes');
    expect(lines).toHaveLength(3);
    expect(box).toEqual(nearly({ x: 25, y: 34.2, width: 126, height: 159.6 }));
  });

  test('count no holes where there are none', () => {
    const none = { pockets: { construction: 'turned', depth_mm: 95 }, pattern: { outsideWidth_mm: 200 } };
    expect(outside(none).holes).toBe(0);
    expect(lettering(none).lines).toHaveLength(2);
  });

  test('show the way of the hide by an arrow up the front board, 0.6 of the height long', () => {
    const { layers } = outside();
    expect(placesOf(layers.direction)[0]).toEqual(nearly([272, 45.6, 272, 182.4]));
    expect(lettering().words).toContainEqual(
      nearly(["this way along the hide's backbone", [269, 114], 3, Math.PI / 2, 'direction']),
    );
  });
});

describe('strap and pen loop on the outside', () => {
  const change = { construction: { strap: { width_mm: 24 }, penLoop: { width_mm: 34 } } };

  test('have their holes and marks there', () => {
    const plain = outside();
    const { layers } = outside(change);
    // The strap's rows of five holes are described with the strap.
    expect(layers.hole).toHaveLength(plain.layers.hole.length + 10);
    expect(placesOf(layers.hole).slice(-10)).toEqual(
      nearly([26, 8].flatMap((x) => series(106, 4, 5).map((y) => [x, y]))),
    );
    expect(layers.mark.length).toBe(plain.layers.mark.length + 3 + 2 + 2);
  });

  test('are named beside them', () => {
    const said = lettering(change).words.map(([text]) => text);
    for (const word of ['strap', 'fastening', 'pen loop']) expect(said).toContain(word);
  });
});
