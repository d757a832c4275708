import { describe, expect, test } from 'vitest';
import type { CoverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { ToolingFace } from '../../../src/core/job/toolingSchema.ts';
import { onCutPiece, onFinishedFace } from '../../../src/core/tooling/toolingArea.ts';
import { toolingAreas } from '../../../src/core/tooling/toolingAreas.ts';
import { defined } from '../../defined.ts';
import { CURVE, nearly, TURNED } from '../pattern/plainSource.ts';
import { plainCover } from './plainCover.ts';

const areaOf = (design: CoverDesign, face: ToolingFace) =>
  defined(toolingAreas(design).find((area) => area.face === face));

const STRAP = { construction: { strap: { width_mm: 25, anchor_mm: 30, reach_mm: 35, end_mm: 15 } } };

describe('the faces that can be tooled', () => {
  test('are both boards, the spine and both pockets; a strap where there is one', () => {
    const faces = (design: CoverDesign) => toolingAreas(design).map(({ face }) => face);
    expect(faces(plainCover())).toEqual(['back', 'spine', 'front', 'frontPocket', 'backPocket']);
    expect(faces(plainCover(STRAP))).toContain('strap');
  });

  test('lie between board edge and fold as the hand case has them: boards 13 to 163 mm from the cut edges, folds of 2 mm', () => {
    const design = plainCover();
    expect(areaOf(design, 'front').whole.x).toEqual(nearly([197, 347]));
    expect(areaOf(design, 'back').whole.x).toEqual(nearly([13, 163]));
    expect(areaOf(design, 'spine').whole.x).toEqual(nearly([165, 195]));
    expect(areaOf(design, 'front').whole.y).toEqual(nearly([4, 224]));
  });

  test('keep off the seam where a board reaches under it: holes of 1 mm at 4 mm end the flat part at 4.5 mm', () => {
    expect(areaOf(plainCover(), 'front').flat.y).toEqual(nearly([4.5, 223.5]));
  });

  test('are clear by a margin of their own on each side', () => {
    const margins = { head_mm: 7, tail_mm: 9, foreEdge_mm: 11, spine_mm: 13, narrow_mm: 3 };
    const design = plainCover({ tooling: { margins } });
    expect(areaOf(design, 'front').clear).toEqual(nearly({ x: [197 + 13, 347 - 11], y: [4.5 + 9, 223.5 - 7] }));
    expect(areaOf(design, 'back').clear).toEqual(nearly({ x: [13 + 11, 163 - 13], y: [4.5 + 9, 223.5 - 7] }));
    expect(areaOf(design, 'spine').clear?.x).toEqual(nearly([168, 192]));
  });

  test('have no clear part where the margins leave none', () => {
    expect(areaOf(plainCover({ tooling: { margins: { narrow_mm: 15 } } }), 'spine').clear).toBeNull();
  });

  test('have the centre line of the front in the middle of what is seen: from 2 mm over the spine to the cut edge', () => {
    // Along the board from the back of the book: from -2 (the leather round the fold) to 150 + 13, so at 80.5, 82.5 from the cut edge.
    const design = plainCover();
    expect(areaOf(design, 'front').centre).toEqual(nearly([360 - 82.5, 114]));
    expect(areaOf(design, 'back').centre).toEqual(nearly([82.5, 114]));
    expect(areaOf(design, 'spine').centre).toEqual(nearly([180, 114]));
  });

  test('of turned ends are the ends themselves, seen the right way round on the outside', () => {
    const design = plainCover(TURNED);
    const [front, back] = [areaOf(design, 'frontPocket'), areaOf(design, 'backPocket')];
    expect([front.piece, front.whole.x, back.whole.x]).toEqual(['outside', nearly([410, 460]), nearly([0, 50])]);
    expect([front.isTurned, back.isTurned]).toEqual([false, false]);
  });

  test('end at the straps footprint on the back and before its end on the front', () => {
    const design = plainCover(STRAP);
    expect(areaOf(design, 'back').flat.x[0]).toBeCloseTo(30, 6);
    expect(areaOf(design, 'front').flat.x[1]).toBeCloseTo(360 - 35 - 15, 6);
  });

  test('of the pockets are those of one pattern: the back one lies on it turned by half a turn', () => {
    const [front, back] = [areaOf(plainCover(), 'frontPocket'), areaOf(plainCover(), 'backPocket')];
    expect(front.whole.x[1]).toBeCloseTo(58, 6);
    expect(back.whole.x).toEqual(nearly([58 - front.whole.x[1], 58 - front.whole.x[0]]));
    expect(onCutPiece(back, [10, 20])).toEqual(nearly([48, 208]));
  });

  test('of the pockets keep off head and tail as off the fore-edge: the corners come down by the whole board', () => {
    const { whole } = areaOf(plainCover(), 'frontPocket');
    expect(whole.x[0]).toBeCloseTo(4 + CURVE, 6);
    expect(whole.y).toEqual(nearly([4 + CURVE, 228 - 4 - CURVE]));
  });

  test('of the pockets end where a scooped mouth lies after making: a quarter of 50 mm in, 2 % less across', () => {
    const scooped = {
      construction: { mouth: 'curved', mouthCurve: 0.25 },
      making: { state: 'cased', changeAlong: 0, changeAcross: -0.02 },
      pockets: { depth_mm: 50 },
    };
    const design = plainCover(scooped);
    const { whole, size } = areaOf(design, 'frontPocket');
    expect(whole.x[1]).toBeCloseTo(size[0] - 0.25 * design.pieces.pocketDepth * 0.98, 6);
  });

  test('of a strap lie as it is seen on the closed book: it comes from the fore-edge, and so lies half a turn from its pattern', () => {
    const strap = areaOf(plainCover(STRAP), 'strap');
    expect([strap.bounds.left, strap.bounds.right]).toEqual(['fastening', 'fore-edge']);
    const [length, width] = strap.size;
    // Its pattern begins at the end sewn to the back; the fastening is 15 mm before the other end.
    expect(onCutPiece(strap, [strap.whole.x[0], 0])).toEqual(nearly([length - 15 - 6, width]));
  });

  test('lie on the cut piece larger by what the leather shrinks, and back', () => {
    const design = plainCover({ making: { state: 'cased', changeAlong: -0.02, changeAcross: -0.01 } });
    for (const area of toolingAreas(design)) {
      const [x, y] = onCutPiece(area, area.centre);
      expect(onFinishedFace(area, [x, y])).toEqual(nearly([...area.centre]));
    }
    const front = areaOf(design, 'front');
    expect(onCutPiece(front, [99, 98])).toEqual(nearly([100, 100]));
  });
});
