import { describe, expect, it } from 'vitest';
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { capstan, STRETCH_LIMITS, type StretchTake, stretchTake } from '../../../src/core/fold/stretch.ts';
import { createStripSolver, solveStrip } from '../../../src/core/strip/solveStrip.ts';
import { soundJob } from '../../jobArbitrary.ts';

const [WIDTH, HEIGHT, THICKNESS, LEATHER, MODULUS] = [165, 240, 28, 1.8, 60];

/** The tide ledger in leather of one thickness, its outside cut `short` mm too narrow. */
function ledger(short: number, leather: object = {}, outsideHeight = 260): CoverDesign {
  const document = {
    format: 'coverwright-job',
    version: 1,
    book: { width_mm: WIDTH, height_mm: HEIGHT, thickness_mm: THICKNESS },
    leather: { outside: { min_mm: LEATHER, max_mm: LEATHER, modulus_MPa: MODULUS, friction: 0, ...leather } },
    ease: { foreEdge_mm: 0 },
    pattern: { rounding_mm: 0, outsideHeight_mm: outsideHeight },
  };
  const { pieces, fits } = coverDesign(soundJob(document));
  const width = pieces.outside.width - fits.nominal.closedSlack - short;
  return coverDesign(soundJob({ ...document, pattern: { ...document.pattern, outsideWidth_mm: width } }));
}

function taken(design: CoverDesign): StretchTake {
  const take = stretchTake(design, 'nominal');
  if (!take) throw new Error('no leather between the seats');
  return take;
}

describe('leather under a pull', () => {
  it('takes F = E A s / L, by hand: 60 MPa, 260 x 1.8 mm, 2 W + T + pi K t less 1 mm long', () => {
    const take = taken(ledger(1));
    const length = 2 * WIDTH + THICKNESS + 2 * LEATHER - 1;
    expect(take.short).toBeCloseTo(1, 9);
    expect(take.strain).toBeCloseTo(1 / length, 12);
    expect(take.pull).toBeCloseTo((60 * 260 * 1.8) / length, 9);
    // 28 080 N / 360.6 mm
    expect(take.pull).toBeCloseTo(77.87, 2);
    expect(take.foldStrain).toBeCloseTo(take.strain, 12);
  });

  it('is what the elastic strip says of a flat strip pulled by as much', () => {
    const length = 360.6;
    const { end, status } = solveStrip(
      createStripSolver(),
      {
        length: length / THICKNESS,
        stretchStiffness: 12 * (THICKNESS / LEATHER) ** 2,
        start: { kind: 'clamp', x: 0, y: 0, angle: 0 },
        end: { kind: 'clamp', x: (length + 1) / THICKNESS, y: 0, angle: 0 },
      },
      [0, 0, (length + 1) / THICKNESS, 0],
    );
    expect(status).toBe('converged');
    const newton = (MODULUS * 260 * LEATHER ** 3) / 12 / THICKNESS ** 2;
    // Half an edge at each clamp does not stretch: one of 200 edges in all.
    expect((end.fx * newton) / taken(ledger(1)).pull / (200 / 199)).toBeCloseTo(1, 6);
  });

  it('is in proportion to shortfall, modulus and height, and nothing where the wrap is long enough', () => {
    const once = taken(ledger(1));
    const length = 2 * WIDTH + THICKNESS + 2 * LEATHER;
    expect((taken(ledger(2)).pull * (length - 2)) / (once.pull * (length - 1))).toBeCloseTo(2, 9);
    expect(taken(ledger(1, { modulus_MPa: 120 })).pull / once.pull).toBeCloseTo(2, 9);
    expect(taken(ledger(1, { modulus_MPa: 120 })).strain).toBeCloseTo(once.strain, 12);
    expect(taken(ledger(1, {}, 520)).pull / once.pull).toBeCloseTo(2, 9);
    expect(taken(ledger(-1))).toMatchObject({ short: 0, pull: 0, strain: 0, foldStrain: 0, takes: true });
  });

  it('takes up to the limit of pull or of strain, whichever comes first, and no more', () => {
    const { most, limitedBy, pull } = taken(ledger(1));
    expect(limitedBy).toBe('pull');
    expect(most).toBeCloseTo(STRETCH_LIMITS.pull / pull, 9);
    const soft = taken(ledger(1, { modulus_MPa: 20, min_mm: 0.5, max_mm: 0.5 }, 250));
    expect(soft.limitedBy).toBe('strain');
    expect(soft.most).toBeCloseTo((STRETCH_LIMITS.strain * soft.short) / soft.strain, 9);
    expect(taken(ledger(1.2)).takes).toBe(true);
    expect(taken(ledger(1.4)).takes).toBe(false);
  });

  it('stretches skived folds more than the rest, as strips in series do', () => {
    const [full, skived] = [taken(ledger(1)), taken(ledger(1, { foldThickness_mm: 0.9 }))];
    // Folds: two right angles on the neutral line, pi K t_f; everything else is as thick as before.
    const fold = 2 * 0.9;
    const length = 2 * WIDTH + THICKNESS + fold - 1;
    expect(skived.pull).toBeCloseTo((60 * 260) / ((length - fold) / 1.8 + fold / 0.9), 9);
    expect(skived.foldStrain / (skived.pull / (60 * 260 * 1.8))).toBeCloseTo(2, 9);
    expect(skived.foldStrain).toBeGreaterThan(1.9 * full.foldStrain);
  });

  it('is held back round the folds as by the capstan equation: T = T0 exp(-mu theta)', () => {
    // Euler 1762; Eytelwein, Handbuch der Statik fester Koerper, 1808. By hand for mu 0.4 and a quarter turn: 0.5335.
    expect(capstan(0.4, Math.PI / 2)).toBeCloseTo(0.5335, 4);
    expect(capstan(0, 3)).toBe(1);
    // A belt over a pulley, a worked case from memory: mu 0.25, half a turn, tight side 2.19 times the slack side.
    expect(1 / capstan(0.25, Math.PI)).toBeCloseTo(2.193, 3);
    // Stretch by integration along the wrap: full pull on the boards, the rest over folds and spine.
    const share = Math.exp((-0.4 * Math.PI) / 2);
    const fold = (1 - share) / ((0.4 * Math.PI) / 2);
    const length = 2 * WIDTH + THICKNESS + 2 * LEATHER - 1;
    const bends = 2 * LEATHER;
    const body = (2 * WIDTH + THICKNESS * share) / (2 * WIDTH + THICKNESS);
    const held = taken(ledger(1, { friction: 0.4 }));
    expect(held.pull).toBeCloseTo((60 * 260 * 1.8) / ((length - bends) * body + bends * fold), 6);
    expect(held.pull).toBeGreaterThan(taken(ledger(1)).pull);
    expect(held.most).toBeLessThan(taken(ledger(1)).most);
  });

  it('has no answer where nothing lies between the seats', () => {
    const document = {
      format: 'coverwright-job',
      version: 1,
      book: { width_mm: WIDTH, height_mm: HEIGHT, thickness_mm: THICKNESS, boardThickness_mm: 12 },
      leather: { outside: { min_mm: 8, max_mm: 8, bendRatio: 3 } },
      pattern: { outsideWidth_mm: 60 },
    };
    expect(stretchTake(coverDesign(soundJob(document)), 'nominal')).toBeNull();
  });
});
