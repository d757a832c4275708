import { describe, expect, it } from 'vitest';
import { needsAt } from '../../../../src/core/allowance/needs.ts';
import { type SeatLayer, type SeatLayerInput, seatLayer } from '../../../../src/core/fold/elastic/seatLayer.ts';
import { createSeatSolver, FIRM_PULL, type SeatEdge, seatStrip } from '../../../../src/core/fold/elastic/seatStrip.ts';
import { EXAMPLE_JOBS } from '../../../../src/core/job/examples.ts';
import { findLevel } from '../../../../src/core/math/findLevel.ts';
import { createStripSolver } from '../../../../src/core/strip/solveStrip.ts';
import { soundJob } from '../../../jobArbitrary.ts';
import { nth } from '../../../nth.ts';

const solver = createSeatSolver();
const EDGES: readonly SeatEdge[] = ['headTail', 'foreEdge'];

const layerOf = (change: Partial<SeatLayerInput>, by = solver): SeatLayer => {
  const layer = seatLayer(
    {
      offset: 1.25,
      thickness: 1.8,
      modulus: 60,
      seatRadius: 0.7 * 1.8,
      creaseSet: 0,
      held: 40,
      pull: 0.3,
      push: 0,
      ...change,
    },
    by,
  );
  expect(layer.status, JSON.stringify(change)).toBe('converged');
  return layer;
};

const jobOf = (change: object = {}, leather: object = {}, pocket?: object) =>
  soundJob({
    format: 'coverwright-job',
    version: 1,
    book: { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5, ...change },
    leather: { outside: { min_mm: 1.8, max_mm: 1.8, ...leather }, pocket },
  });

function seatOf(edge: SeatEdge, press: number, creased: boolean, job = jobOf()) {
  const seat = seatStrip(job, needsAt(job, 'nominal'), edge, { press, creased }, solver);
  if (!seat) throw new Error('no seam there');
  expect(seat.status).toBe('converged');
  return seat;
}

/**
 * Run of a gentle fold by beam theory, h << s << lambda. Before the corner y = A u^2 + B u^3 with y(s) = h; at the corner the
 * curvature is -kappa times the slope, kappa and the shear behind it those of the leather on the board. The corner's force,
 * which is the jump in shear, times the slope is the load.
 */
function gentleRun(h: number, loadOverStiffness: number, kappa: number, shearBehind: number): number {
  const load = (s: number): number => {
    const r = (kappa * s) / 4;
    const slope = (1.5 * h) / (s * (1 + r));
    const cubic = (3 * h * (1 + 4 * r)) / ((1 + r) * s ** 3);
    return slope * (cubic + shearBehind * slope);
  };
  return findLevel((s) => -load(s), -loadOverStiffness, 1e-3 * h, 1e4 * h);
}

describe('one layer over the board edge', () => {
  // Thin and stiff, so that thickness and stretching play no part; lambda 40 mm.
  const gentle = { offset: 0.05, thickness: 1e-3, modulus: (12 * 40 ** 2) / 1e-9, seatRadius: 1 };

  it.each([0.02, 0.05, 0.1])('pushed gently at the seam is the beam of the handbooks, h %f', (offset) => {
    const { run } = layerOf({ ...gentle, offset, held: 20, pull: 0, push: 1 });
    // Clamped a behind a support: moment 4 EI/a, shear 6 EI/a^2 per unit of slope.
    expect(run / gentleRun(offset, 1 / 40 ** 2, 4 / 20, 6 / 20 ** 2)).toBeCloseTo(1, 2);
  });

  it.each([0.02, 0.05, 0.1])('pulled gently behind the edge is the tie-beam of the handbooks, h %f', (offset) => {
    const { run } = layerOf({ ...gentle, offset, held: 8 * 40, pull: 1, push: 0 });
    // Far along, a beam under tension turns with EI/lambda per unit of slope and takes no shear.
    expect(run / gentleRun(offset, 1 / 40 ** 2, 1 / 40, 0)).toBeCloseTo(1, 1);
  });

  it('neither enters the board nor crosses the plane where the layers meet', () => {
    for (const creaseSet of [0, 0.8]) {
      for (const loads of [
        { pull: 0.3, push: 0 },
        { pull: 0, push: 0.5, held: 20, offset: 2.5 },
      ]) {
        const { path } = layerOf({ ...loads, creaseSet });
        const h = loads.offset ?? 1.25;
        for (let i = 0; i < path.length; i += 2) {
          const [x, y] = [nth(path, i), nth(path, i + 1)];
          expect(y).toBeGreaterThan(0.9 - h - 2e-3);
          const toBoard = x >= 0 ? y : Math.hypot(x, Math.max(0, y));
          // The corner is rounded with facets of 15 degrees, which cut t/2 by 0.9 %.
          expect(toBoard).toBeGreaterThan(0.9 * (1 - 0.009) - 2e-3);
        }
      }
    }
  });

  it('is at rest where it is let go: held at the run it found, the seam needs no force', () => {
    const free = layerOf({});
    expect(Math.abs(layerOf({ run: free.run }).along)).toBeLessThan(1e-3);
    expect(layerOf({ run: 0.9 * free.run }).along).toBeLessThan(-0.01);
    expect(layerOf({ run: 1.1 * free.run }).along).toBeGreaterThan(0.01);
  });

  it('is the same shape at twice the size under the same stress', () => {
    const [once, twice] = [
      layerOf({}),
      layerOf({ offset: 2.5, thickness: 3.6, seatRadius: 2.52, held: 80, pull: 0.6 }),
    ];
    expect(twice.run / once.run).toBeCloseTo(2, 6);
    expect(twice.length / once.length).toBeCloseTo(2, 6);
  });

  it('keeps its run within a fiftieth of a millimetre at twice the resolution', () => {
    const fine = createStripSolver({ ...solver.settings, segments: 800 });
    for (const change of [{}, { creaseSet: 0.8 }]) {
      const input = {
        offset: 1.25,
        thickness: 1.8,
        modulus: 60,
        seatRadius: 1.26,
        creaseSet: 0,
        held: 40,
        pull: 0.3,
        push: 0,
      };
      const { status, run } = seatLayer({ ...input, ...change }, fine);
      expect(status).toBe('converged');
      expect(Math.abs(run - layerOf(change).run)).toBeLessThan(0.02);
    }
  });

  it('stands nearer the board the harder thin leather is pushed under a high edge, which braces it', () => {
    const thin = { offset: 5, thickness: 0.6, seatRadius: 0.42, creaseSet: 0.8, held: 20, pull: 0 };
    const runs = [0.02, 0.1, 0.5, 1, 2].map((push) => layerOf({ ...thin, push }).run);
    runs.slice(1).forEach((run, i) => {
      expect(run).toBeLessThan(nth(runs, i));
    });
  });

  it('says that it found no balance where leather as thin as paper is pushed harder than it can stand', () => {
    const thin = { offset: 12, thickness: 0.2, modulus: 20, seatRadius: 0.1, creaseSet: 0, held: 15, pull: 0 };
    const { status, message } = seatLayer({ ...thin, push: 2.6 }, solver);
    expect(status).not.toBe('converged');
    expect(message).toContain('folds away');
  });

  it('names what is wrong with its input, and yields finite numbers', () => {
    for (const change of [
      { thickness: Number.NaN },
      { offset: -1 },
      { pull: 0, push: 0 },
      { held: Number.POSITIVE_INFINITY },
    ]) {
      const layer = seatLayer(
        { offset: 1, thickness: 1, modulus: 60, seatRadius: 1, creaseSet: 0, held: 20, pull: 1, push: 0, ...change },
        solver,
      );
      expect(layer.status).toBe('badInput');
      expect([layer.run, layer.length, layer.transverse, layer.residual].filter((v) => !Number.isFinite(v))).toEqual(
        [],
      );
    }
  });
});

describe('a board edge in its pocket', () => {
  it.each(EDGES)('comes nearer the seam the harder it is pressed, %s', (edge) => {
    const seats = [25, 50, 100, 200, 400].map((press) => seatOf(edge, press, false));
    seats.slice(1).forEach((seat, i) => {
      expect(seat.seat).toBeLessThan(nth(seats, i).seat);
      expect(seat.needed).toBeLessThan(nth(seats, i).needed);
    });
  });

  it('is one layer under half the press an mm of edge at head and tail, and the pocket under all of it at the fore-edge', () => {
    const pull = FIRM_PULL / 165 / 2;
    const half = layerOf({ pull, held: 6 * Math.sqrt((60 * 1.8 ** 3) / 12 / pull) });
    expect(seatOf('headTail', FIRM_PULL, false)).toMatchObject({ seat: half.run, needed: half.length, spread: 0 });
    const alone = layerOf({ offset: 2.5, pull: 0, push: FIRM_PULL / 240, held: 20 });
    expect(seatOf('foreEdge', FIRM_PULL, false)).toMatchObject({ seat: alone.run, pocketLength: alone.length });
  });

  it.each(EDGES)('needs more room the thicker the board and the leather, %s', (edge) => {
    const usual = seatOf(edge, FIRM_PULL, false);
    expect(seatOf(edge, FIRM_PULL, false, jobOf({ boardThickness_mm: 3 })).needed).toBeGreaterThan(usual.needed);
    expect(seatOf(edge, FIRM_PULL, false, jobOf({}, { max_mm: 2.2 })).needed).toBeGreaterThan(usual.needed);
  });

  it.each(EDGES)(
    'stands farther off in new elastic leather than in the pressed S, and nears it as the fold sets, %s',
    (edge) => {
      const seatAt = (creaseSet: number) => seatOf(edge, FIRM_PULL, true, jobOf({}, { creaseSet }));
      const [fresh, half, set] = [seatAt(0), seatAt(0.5), seatAt(0.8)];
      expect(fresh.seat).toBe(seatOf(edge, FIRM_PULL, false).seat);
      expect(fresh.seat).toBeGreaterThan(2 * fresh.closed.seat);
      expect(half.seat).toBeLessThan(fresh.seat);
      expect(set.seat).toBeLessThan(half.seat);
      expect(Math.abs(set.needed - set.closed.needed)).toBeLessThan(0.5);
    },
  );

  it('is drawn from the seam line inward, layers face to face there and on their faces of the board at the end', () => {
    for (const edge of EDGES) {
      const { outside, pocket, seat } = seatOf(edge, FIRM_PULL, true);
      expect(outside[0]).toBeCloseTo(0, 3);
      expect(pocket[0]).toBeCloseTo(0, 3);
      expect(nth(outside, 1) - nth(pocket, 1)).toBeCloseTo(1.8, 2);
      expect(outside.at(-2)).toBeGreaterThan(seat + 10);
      expect(outside.at(-1)).toBeCloseTo(1.25 + 0.9, 2);
      expect(pocket.at(-1)).toBeCloseTo(-1.25 - 0.9, 2);
    }
  });

  it('lies, in unequal leathers pinned together, between the pairs of each', () => {
    // Leathers near enough to share the pull, on a strip fine enough for differences; the pinned state is found here by Newton on the three balances.
    const fine = createStripSolver({ ...solver.settings, segments: 1600 });
    const [board, press] = [5, 0.5];
    const leathers = [0.8, 1] as const;
    const held = (t: number, pull: number) => 6 * Math.sqrt((60 * t ** 3) / 12 / pull);
    const layer = (t: number, offset: number, pull: number, run?: number) =>
      layerOf({ thickness: t, seatRadius: 0.7 * t, creaseSet: 0.8, offset, pull, held: held(t, pull), run }, fine);
    const pairs = leathers.map((t) => layer(t, board / 2, press / 2));
    const balances = (at: readonly number[]) => {
      const [run, offset, pull] = [nth(at, 0), nth(at, 1), nth(at, 2)];
      const o = layer(leathers[0], offset, pull, run);
      const p = layer(leathers[1], board - offset, press - pull, run);
      return { off: [o.along + p.along, o.transverse - p.transverse, o.length - p.length], length: o.length };
    };
    let at = [(nth(pairs, 0).run + nth(pairs, 1).run) / 2, board / 2, press / 2];
    for (let round = 0; round < 5; round++) {
      const { off } = balances(at);
      const rates = at.map((_, j) =>
        balances(at.map((v, i) => (i === j ? v + 1e-2 : v))).off.map((v, i) => (v - nth(off, i)) / 1e-2),
      );
      at = at.map((v, j) => v - determinant(rates.map((row, i) => (i === j ? off : row))) / determinant(rates));
    }
    const pinned = balances(at);
    for (const v of pinned.off) expect(Math.abs(v)).toBeLessThan(1e-3);
    expect(at[0]).toBeGreaterThan(nth(pairs, 0).run);
    expect(at[0]).toBeLessThan(nth(pairs, 1).run);
    expect(pinned.length).toBeGreaterThan(nth(pairs, 0).length);
    expect(pinned.length).toBeLessThan(nth(pairs, 1).length);
  });

  it('counts the larger of two unequal pairs, and says how far apart they are', () => {
    const thin = { min_mm: 1.2, max_mm: 1.2 };
    const mixed = seatOf('headTail', FIRM_PULL, false, jobOf({}, {}, thin));
    const pairs = [jobOf(), jobOf({}, thin)].map((job) => seatOf('headTail', FIRM_PULL, false, job));
    expect(mixed.seat).toBe(nth(pairs, 0).seat);
    expect(mixed.spread).toBeCloseTo(nth(pairs, 0).seat - nth(pairs, 1).seat, 9);
    expect(mixed.pocketLength).toBe(nth(pairs, 1).needed);
    expect(nth(pairs, 0).spread).toBe(0);
  });

  it('has no seam at the fore-edge of turned ends', () => {
    const job = { ...jobOf(), pockets: { ...jobOf().pockets, construction: 'turned' as const } };
    const turned = soundJob(JSON.parse(JSON.stringify(job)));
    expect(seatStrip(turned, needsAt(turned, 'thick'), 'foreEdge', { press: 100, creased: true }, solver)).toBeNull();
  });

  it.each(EXAMPLE_JOBS)('is found for $id, new and creased, under pulls from gentle to hard', ({ document }) => {
    const job = soundJob(document);
    for (const edge of EDGES) {
      for (const creased of [false, true]) for (const press of [50, 100, 300]) seatOf(edge, press, creased, job);
    }
  });
});

function determinant(rows: readonly (readonly number[])[]): number {
  const [a, b, c] = [nth(rows, 0), nth(rows, 1), nth(rows, 2)];
  const minor = (i: number, j: number) => nth(b, i) * nth(c, j) - nth(b, j) * nth(c, i);
  return nth(a, 0) * minor(1, 2) - nth(a, 1) * minor(0, 2) + nth(a, 2) * minor(0, 1);
}
