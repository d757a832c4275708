import { describe, expect, it } from 'vitest';
import { growOutline } from '../../../src/core/strip/obstacle.ts';
import { faultIn, type StripEnd, type StripProblem } from '../../../src/core/strip/stripProblem.ts';

const clamp: StripEnd = { kind: 'clamp', x: 0, y: 0, angle: 0 };
const slide: StripEnd = { kind: 'slide', x: 1, y: 0, angle: 0 };
const sound: StripProblem = { length: 1, stretchStiffness: 12, start: clamp, end: clamp };
const outline = growOutline([0, 0, 1, 0], false, 0, 1);

describe('a problem is sound', () => {
  it.each<[string, Partial<StripProblem>]>([
    ['with two clamps', {}],
    ['with free ends, whatever they carry', { start: { kind: 'free' }, end: { kind: 'free', x: NaN } as StripEnd }],
    ['with a slide without limits', { end: slide }],
    ['with a slide of one limit', { end: { ...slide, min: 3 } }],
    ['with a slide of the other', { end: { ...slide, max: -3 } }],
    ['with a slide between equal limits and a force', { end: { ...slide, min: 0.5, max: 0.5, force: -2 } }],
    ['with loads at both ends', { loads: [0, 1].map((at) => ({ at, fx: 1, fy: -1 })) }],
    ['with two rest angles', { restAngle: [0, 1] }],
    ['with an obstacle of two points', { obstacle: outline }],
  ])('%s', (_, change) => {
    expect(faultIn({ ...sound, ...change }, 4)).toBeNull();
  });
});

describe('a problem is faulty', () => {
  it.each([3, 4.5, Number.NaN])('with %d segments', (segments) => {
    expect(faultIn(sound, segments)).toBe(`segments: got ${segments}, allowed a whole number from 4`);
  });

  it.each<[Partial<StripProblem>, string]>([
    [{ length: 0 }, 'length: got 0, allowed above 0'],
    [{ length: Infinity }, 'length: got Infinity, allowed above 0'],
    [{ stretchStiffness: 0 }, 'stretchStiffness: got 0, allowed above 0'],
    [{ stretchStiffness: Infinity }, 'stretchStiffness: got Infinity, allowed above 0'],
    [{ start: { ...clamp, y: Infinity } }, 'start: place and angle must be finite numbers'],
    [{ start: { ...clamp, angle: Number.NaN } }, 'start: place and angle must be finite numbers'],
    [{ end: { ...slide, x: Number.NaN } }, 'end: place and angle must be finite numbers'],
    [{ end: { ...slide, force: Infinity } }, 'end.force: got Infinity, allowed a finite number'],
    [{ start: { ...slide, min: 1, max: 0.9 } }, 'start: min 1 is not at most max 0.9'],
    [{ start: { ...slide, min: Number.NaN } }, 'start: min NaN is not at most max undefined'],
    [{ loads: [{ at: -0.1, fx: 0, fy: 0 }] }, 'loads.at: got -0.1, allowed 0 to 1'],
    [{ loads: [{ at: 1.1, fx: 0, fy: 0 }] }, 'loads.at: got 1.1, allowed 0 to 1'],
    [{ loads: [{ at: 0, fx: Infinity, fy: 0 }] }, 'loads: forces must be finite numbers'],
    [{ loads: [{ at: 0, fx: 0, fy: Number.NaN }] }, 'loads: forces must be finite numbers'],
    [{ restAngle: [0] }, 'restAngle: at least two finite angles are needed'],
    [{ restAngle: [0, Number.NaN] }, 'restAngle: at least two finite angles are needed'],
    [{ obstacle: growOutline([1, 1], false, 0, 1) }, 'obstacle: at least two points apart are needed'],
    [
      { obstacle: { ...outline, x: Float64Array.of(0, Infinity) } },
      'obstacle: every coordinate must be a finite number',
    ],
    [
      { obstacle: { ...outline, y: Float64Array.of(Number.NaN, 0) } },
      'obstacle: every coordinate must be a finite number',
    ],
  ])('with %o', (change, fault) => {
    expect(faultIn({ ...sound, ...change }, 4)).toBe(fault);
  });
});
