import { parseString } from 'dxf';
import { describe, expect, test } from 'vitest';
import { loadFace } from '../../../src/artwork/faces/loadFace.ts';
import { flattened } from '../../../src/core/math/contour.ts';
import { bedFile, machineFile } from '../../../src/output/machine/machineFile.ts';
import { machinePlan } from '../../../src/output/machine/machinePlan.ts';
import { isCircle, type Stroke } from '../../../src/output/machine/stroke.ts';
import { nth } from '../../nth.ts';
import { type Found, readDxf, readSvg } from '../cuttingFileReading.ts';
import { cuttingJobs } from '../cuttingJobs.ts';
import { apart } from '../outlineDistance.ts';
import { followHpgl } from './hpglReading.ts';
import { soundMachine } from './machines.ts';

const jobs = cuttingJobs();
const face = await loadFace('singleLine');
// Stitched, with rounded corners, scooped mouths, a strap and a slot; and laced in inches.
const cases = [
  { ...nth(jobs, 3), as: 'arcs' as const },
  { ...nth(jobs, 7), as: 'points' as const },
];
const planned = ({ drawing, as }: (typeof cases)[number]) => {
  const profile = soundMachine({ curves: { as, tolerance_mm: 0.01 }, crosses: true });
  return { profile, plan: machinePlan(drawing, profile, { face, kerf_mm: 0.2 }) };
};
const arcsOf = ({ path }: Stroke): number => path.filter(({ kind }) => kind === 'arc').length;

describe.each(cases)('the files of a machine for $name, curves as $as', (each) => {
  const { plan, profile } = planned(each);
  const bed = nth(plan.beds, 0);
  const strokes = bed.passes.flatMap(({ strokes, marks }) => strokes.map((stroke) => ({ stroke, marks })));
  const matches = (found: readonly Found[], height: number): void => {
    expect(found.map(({ layer }) => layer)).toEqual(strokes.map(({ marks }) => marks.layer));
    strokes.forEach(({ stroke }, i) => {
      const got = nth(found, i);
      const points = got.points.map(([x, y]) => [x, y + height] as const);
      expect(apart(points, flattened(stroke.path, 0.001))).toBeLessThan(0.003);
      expect(got.isClosed).toBe(stroke.isClosed);
      expect(got.radii.length).toBe(isCircle(stroke) ? 1 : arcsOf(stroke));
    });
    expect(found.every(({ text }) => text === null)).toBe(true);
  };

  test('SVG: every stroke in order, on its pass, in its colour', () => {
    const file = readSvg(bedFile(plan, bed, 'svg', profile.dxf));
    matches(file.found, plan.bed.height);
    expect([...file.colours]).toEqual(bed.passes.map(({ marks }) => [marks.layer, marks.colour]));
    expect(file.size).toEqual([1300, 900]);
  });

  test.each(['R12', '2000'] as const)(
    'DXF %s: every stroke in order, on its layer, in its colour, by two readers',
    (edition) => {
      const text = bedFile(plan, bed, 'dxf', edition);
      const file = readDxf(text);
      matches(file.found, 0);
      for (const { marks } of bed.passes) expect(file.colours.get(marks.layer)).toBe(`${marks.dxfColour}`);
      const other = parseString(text);
      expect(other.entities.map(({ layer }) => layer)).toEqual(strokes.map(({ marks }) => marks.layer));
      const bulges = other.entities.flatMap((entity) => (entity.vertices ?? []).filter(({ bulge }) => bulge)).length;
      expect(bulges).toBe(
        strokes.filter(({ stroke }) => !isCircle(stroke)).reduce((sum, { stroke }) => sum + arcsOf(stroke), 0),
      );
      expect(other.header).toMatchObject({ extMin: { x: 0, y: 0 }, extMax: { x: 1300, y: 900 } });
      if (edition === '2000') expect(other.header).toMatchObject({ measurement: 1, insUnits: 4 });
      // What a reader of its edition knows: no light polyline in R12, letters of ASCII in both.
      expect(text.includes('LWPOLYLINE')).toBe(edition === '2000');
      expect(text).toMatch(edition === 'R12' ? /\$ACADVER\n\s*1\nAC1009/ : /\$ACADVER\n\s*1\nAC1015/);
      expect(text).toMatch(/^[\x20-\x7e\r\n]*$/);
    },
  );

  test('HPGL: every stroke in order, by its pen, and a safe end', () => {
    const { drawn, end } = followHpgl(bedFile(plan, bed, 'hpgl', profile.dxf));
    expect(drawn.map(({ pen }) => pen)).toEqual(strokes.map(({ marks }) => marks.pen));
    strokes.forEach(({ stroke }, i) => {
      const got = nth(drawn, i);
      // Whole units: a corner is off by half a unit each way at most; an arc that would be further off comes as chords.
      expect(got.arcs).toBeLessThanOrEqual(arcsOf(stroke));
      expect(apart(got.points, flattened(stroke.path, 0.001))).toBeLessThan(0.02);
    });
    const [asked, kept] = [strokes.map(({ stroke }) => arcsOf(stroke)), drawn.map(({ arcs }) => arcs)].map((counts) =>
      counts.reduce((sum, count) => sum + count, 0),
    );
    // Most arcs stay arcs: 757 of 928 here, by measurement.
    expect(kept).toBeGreaterThanOrEqual(0.75 * asked!);
    expect(end).toEqual({ isDown: false, at: [0, 0], pen: 0 });
  });

  test('say the same every time, and the cautions where no machine draws them', () => {
    const again = machineFile(each.drawing, profile, 'hpgl', { face, kerf_mm: 0.2 });
    expect(again[0]).toBe(bedFile(plan, bed, 'hpgl', profile.dxf));
    expect(bedFile(plan, bed, 'svg', '2000')).toMatch(/<desc>.*never cut PVC/);
    expect(bedFile(plan, bed, 'dxf', 'R12')).toMatch(/^999\n.*\n999\nLaser: never cut PVC/m);
  });
});
