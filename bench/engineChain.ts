import { BoxShape, EdgeShape, Settings, Vec2, WeldJoint, World } from 'planck';
import { findLevel } from '../src/core/math/findLevel.ts';
import { nth } from '../tests/nth.ts';

/** Metres of the engine to one thickness of the block: its tolerances are absolute, so the model is made large. */
const SCALE = 100;

/** Allowed overlap, m; the engine's own 0.005 would be 5e-5 of the block. */
const SLOP = 5e-4;

/** Edge and box have a skin of two slops each, and rest one slop deep: the block is made smaller by that. */
const SKIN = 3 * SLOP;

const STEP = 1 / 60;

export interface ChainSettings {
  readonly segments: number;
  /**
   * Steps to a period of the slowest bending. A joint's own frequency is some 1.4 N^2 times higher, and the engine, which
   * solves joint after joint, keeps shaking where a step is long beside that; a shorter step costs steps.
   */
  readonly stepsPerPeriod: number;
  /** Of the engine's velocity and position solvers per step. */
  readonly iterations: number;
  /** Most milliseconds to run. */
  readonly budget: number;
}

export interface ChainRun {
  readonly bow: number;
  readonly bulge: number;
  readonly steps: number;
  readonly milliseconds: number;
  /** Bow and bulge came to rest; otherwise the time ran out. */
  readonly settled: boolean;
}

/**
 * The block wrap as a chain of rigid segments in a rigid-body engine, let swing until it rests.
 *
 * A clamped strip of N segments h long: weld joints, rigid in place and soft in rotation with k = EI/h (2 EI/h at the
 * clamps), no gravity, damping near critical for the slowest mode. The joint takes a frequency: k = I_eff (2 pi f)^2.
 *
 * @param a clamps behind the spine, and `slack`, both in block thicknesses
 */
export function runChain(a: number, slack: number, settings: ChainSettings): ChainRun {
  const { segments, iterations } = settings;
  const period = settings.stepsPerPeriod * STEP;
  Settings.linearSlop = SLOP;
  const began = performance.now();
  const length = 2 * a + 1 + slack;
  const h = (length * SCALE) / segments;
  const path = startPath(a, length, segments);
  const world = new World({ gravity: new Vec2(0, 0), allowSleep: false, continuousPhysics: false });

  // The engine keeps a body's first angle within half a circle, so the spine lies below: the strip turns from -90 to 90 degrees.
  const depth = (a + 1) * SCALE;
  const block = world.createBody();
  const half = SCALE / 2 - SKIN;
  block.createFixture({ shape: new BoxShape(half, depth / 2, new Vec2(0, depth / 2 + SKIN), 0), friction: 0 });

  // Total mass 1 kg; EI so that the clamped strip's slowest mode, (4.73/L)^2 sqrt(EI/rho), has the period asked for.
  const mass = 1 / segments;
  const inertia = (mass * h * h) / 12;
  const metres = length * SCALE;
  const bending = (1 / metres) * ((2 * Math.PI) / period / (4.73 / metres) ** 2) ** 2;
  const damping = (4 * Math.PI) / period;

  const clamp = (x: number, y: number, angle: number) => world.createBody({ position: new Vec2(x, y), angle });
  let before = clamp(-SCALE / 2, a * SCALE, -Math.PI / 2);
  const bodies = path.angles.map((angle, i) => {
    const [x, y] = nth(path.points, i);
    const at = new Vec2(x * SCALE, y * SCALE);
    const body = world.createBody({
      type: 'dynamic',
      position: at,
      angle,
      linearDamping: damping,
      angularDamping: damping,
    });
    body.createFixture({ shape: new EdgeShape(new Vec2(0, 0), new Vec2(h, 0)), friction: 0, filterGroupIndex: -1 });
    // Mass data are about the body's own origin, its first end.
    body.setMassData({ mass, center: new Vec2(h / 2, 0), I: inertia + mass * (h / 2) ** 2 });
    return body;
  });
  const last = clamp(SCALE / 2, a * SCALE, Math.PI / 2);
  for (let i = 0; i <= segments; i++) {
    const body = bodies[i] ?? last;
    const isClamp = i === 0 || i === segments;
    const stiffness = ((isClamp ? 2 : 1) * bending) / h;
    const effective = isClamp ? inertia : inertia / 2;
    world.createJoint(
      new WeldJoint({
        bodyA: before,
        bodyB: body,
        localAnchorA: i === 0 ? new Vec2(0, 0) : new Vec2(h, 0),
        localAnchorB: new Vec2(0, 0),
        referenceAngle: 0,
        frequencyHz: Math.sqrt(stiffness / effective) / (2 * Math.PI),
        dampingRatio: 0.5,
      }),
    );
    before = body;
  }

  let steps = 0;
  let bow = 0;
  let bulge = 0;
  let settled = false;
  while (!settled && performance.now() - began < settings.budget) {
    // A quarter period between two looks, so that a slow drift is not taken for rest.
    const stint = Math.ceil(settings.stepsPerPeriod / 4);
    for (let k = 0; k < stint; k++) world.step(STEP, iterations, iterations);
    steps += stint;
    const points = bodies.map((body) => body.getPosition());
    const next = {
      bow: peakOf(points.map(({ y }) => -y)) / SCALE,
      bulge: peakOf(points.map(({ x }) => -x)) / SCALE - 0.5,
    };
    settled = Math.abs(next.bow - bow) < 1e-5 && Math.abs(next.bulge - bulge) < 1e-5;
    ({ bow, bulge } = next);
  }
  return { bow, bulge, steps, milliseconds: performance.now() - began, settled };
}

/** Straight legs on the faces and half an ellipse round the spine, as long as the strip, cut into equal segments. */
function startPath(a: number, length: number, segments: number) {
  const fine = (bow: number): Point[] => {
    const points: Point[] = [[-0.5, a]];
    for (let i = 0; i <= 200; i++)
      points.push([-0.5 * Math.cos((Math.PI * i) / 200), -bow * Math.sin((Math.PI * i) / 200)]);
    points.push([0.5, a]);
    return points;
  };
  const apart = (p: Point, q: Point): number => Math.hypot(q[0] - p[0], q[1] - p[1]);
  const measure = (points: readonly Point[]): number =>
    points.slice(1).reduce((sum, point, i) => sum + apart(nth(points, i), point), 0);
  const ellipse = fine(findLevel((bow) => measure(fine(bow)), length, 0, length));
  let i = 1;
  let passed = 0;
  const points = Array.from({ length: segments + 1 }, (_, k): Point => {
    const along = (k * length) / segments;
    const gap = () => apart(nth(ellipse, i - 1), nth(ellipse, i));
    while (i < ellipse.length - 1 && passed + gap() < along) {
      passed += gap();
      i++;
    }
    const share = (along - passed) / gap();
    const [from, to] = [nth(ellipse, i - 1), nth(ellipse, i)];
    return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
  });
  const angles = points.slice(1).map((next, k) => {
    const from = nth(points, k);
    return Math.atan2(next[1] - from[1], next[0] - from[0]);
  });
  return { points, angles };
}

type Point = readonly [x: number, y: number];

/** Highest value, by a parabola through the highest sample and its neighbours. */
function peakOf(values: readonly number[]): number {
  const best = values.reduce((top, value, i) => (value > nth(values, top) ? i : top), 0);
  const [before, at, after] = [values[best - 1], nth(values, best), values[best + 1]];
  if (before === undefined || after === undefined) return at;
  const bend = after - 2 * at + before;
  return bend < 0 ? at - (after - before) ** 2 / (8 * bend) : at;
}
