import { describe, expect, test } from 'vitest';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { soundJob } from '../../jobArbitrary.ts';

const document = {
  format: 'coverwright-job',
  version: 3,
  book: { width_mm: 165, height_mm: 240, thickness_mm: 28 },
  leather: { outside: { min_mm: 1.6, max_mm: 2 } },
};

const ten = { kind: 'pricking iron', pitch_mm: 3, teeth: [10, 2], tooth_mm: 2, angle_deg: 45 };

const withSeam = (seam: object) => ({ ...document, seam });

const issuesOf = (seam: object): string[] => {
  const parsed = parseJob(withSeam(seam));
  return parsed.ok ? [] : parsed.issues.map(({ path, allowed }) => `${path}: ${allowed}`);
};

describe('the iron of a seam', () => {
  test('is none unless the job names one', () => {
    expect(soundJob(document).seam.iron).toBeNull();
  });

  test('sets the pitch, whatever pitch is written beside it, and is read back as it was written out', () => {
    const job = soundJob(withSeam({ pitch_mm: 4.5, iron: ten }));
    expect(job.seam).toMatchObject({ pitch_mm: 3, iron: { ...ten, name: '' } });
    expect(soundJob(JSON.parse(JSON.stringify(job)))).toEqual(job);
    expect(soundJob(withSeam({ pitch_mm: 4.5, iron: null })).seam.pitch_mm).toBe(4.5);
  });

  test.each([
    ['of no known kind', { iron: { ...ten, kind: 'awl' } }, 'seam.iron.kind'],
    ['for stitching, in a laced seam', { method: 'lacing', iron: ten }, 'seam.iron.kind'],
    ['for lacing, in a stitched seam', { iron: { ...ten, kind: 'lacing chisel' } }, 'seam.iron.kind'],
    ['with a stride under 1 mm', { iron: { ...ten, pitch_mm: 0.5 } }, 'seam.iron.pitch_mm'],
    ['without a stride', { iron: { ...ten, pitch_mm: undefined } }, 'seam.iron.pitch_mm'],
    ['without teeth', { iron: { ...ten, teeth: [] } }, 'seam.iron.teeth'],
    ['with half a tooth', { iron: { ...ten, teeth: [10, 2.5] } }, 'seam.iron.teeth.1'],
    ['with a tooth of no width', { iron: { ...ten, tooth_mm: 0 } }, 'seam.iron.tooth_mm'],
    ['that leans past upright', { iron: { ...ten, angle_deg: 120 } }, 'seam.iron.angle_deg'],
  ])('%s is refused by its place', (_, seam, path) => {
    expect(issuesOf(seam)).toEqual([expect.stringContaining(`${path}: `)]);
  });

  test('of round holes serves stitching and lacing', () => {
    const punch = { kind: 'drive punch', pitch_mm: 5, tooth_mm: 1.5 };
    expect(issuesOf({ iron: punch })).toEqual([]);
    expect(issuesOf({ method: 'lacing', iron: punch })).toEqual([]);
  });
});

test('a point of an outline has exactly two coordinates', () => {
  const issues = (outline: number[][]): string[] => {
    const parsed = parseJob({ ...document, hides: { outside: { outline } } });
    return parsed.ok ? [] : parsed.issues.map(({ path }) => path);
  };
  expect(
    issues([
      [0, 0],
      [600, 0],
      [0, 600],
    ]),
  ).toEqual([]);
  expect(issues([[0, 0], [600], [0, 600]])).toEqual(['hides.outside.outline.1']);
  expect(
    issues([
      [0, 0],
      [600, 0, 1],
      [0, 600],
    ]),
  ).toEqual(['hides.outside.outline.1']);
});
