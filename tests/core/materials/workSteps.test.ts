import { expect, test } from 'vitest';
import choirBook from '../../../public/jobs/choir-book.json' with { type: 'json' };
import tideLedger from '../../../public/jobs/tide-ledger.json' with { type: 'json' };
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { coverSupplies } from '../../../src/core/materials/coverSupplies.ts';
import { workSteps } from '../../../src/core/materials/workSteps.ts';

const cautionsOf = (seam: 'stitching' | 'lacing') => {
  const parsed = parseJob({ ...(seam === 'lacing' ? choirBook : tideLedger), seam: { method: seam } });
  if (!parsed.ok) throw new Error('the job does not parse');
  const steps = workSteps(parsed.job, coverSupplies(coverDesign(parsed.job)));
  return new Map(steps.map(({ id, cautions }) => [id, cautions.join(' ')]));
};

// Tools of either seam: common practice, no source.
test('each seam has a caution for its own tools', () => {
  const [stitched, laced] = [cautionsOf('stitching'), cautionsOf('lacing')];
  for (const step of ['punch', 'stitch'] as const)
    expect(stitched.get(step)).toMatch(/^Pricking iron, mallet and awl:/);
  expect([...stitched.values()].join()).not.toMatch(/lacing/);
  for (const step of ['punch', 'lace'] as const) expect(laced.get(step)).toMatch(/^Awl and lacing chisel:/);
});

test('the caution for cement names both kinds, flame, spark, gloves, data sheet and local rules', () => {
  for (const words of ['solvent', 'flames and sparks', 'gloves', 'safety data sheet', 'local rules', 'Water-based'])
    expect(cautionsOf('stitching').get('assemble')).toContain(words);
});

test('no laser is mentioned where a knife cuts', () => {
  for (const cautions of cautionsOf('lacing').values()) expect(cautions).not.toMatch(/laser/i);
  expect(cautionsOf('lacing').get('cut')).toMatch(/^Knife/);
});
