import { expect, test } from 'vitest';
import { EXAMPLE_JOBS } from '../../../src/core/job/examples.ts';
import { patched } from '../../../src/core/job/jobDocument.ts';
import { JOB_PATHS } from '../../../src/core/job/jobPaths.ts';
import { parseJob } from '../../../src/core/job/parseJob.ts';
import { isColour, readField } from '../../../src/core/job/readField.ts';
import { parseColour } from '../../../src/core/units/parseColour.ts';
import { nth } from '../../nth.ts';

// CSS Color Module Level 4, section 5.2: six digits, or three that each stand for two alike; in any case.
test.each([
  ['#8f5b3a', '#8f5b3a'],
  ['#8F5B3A', '#8f5b3a'],
  [' 8f5b3a ', '#8f5b3a'],
  ['#85a', '#8855aa'],
  ['000', '#000000'],
])('%s is the colour %s', (text, value) => expect(parseColour(text)).toMatchObject({ ok: true, value }));

test.each(['', '#', '#12', '#1234', '#12345', '#1234567', 'brown', '#gggggg', '##8f5b3a'])(
  '%s is no colour',
  (text) => {
    const reading = parseColour(text);
    expect(reading.ok).toBe(false);
    expect(reading.ok ? '' : reading.message).toMatch(/Write two figures or letters each for red, green and blue/);
  },
);

test('every colour of a job is read as one, and what is read is taken by the schema', () => {
  const colours = JOB_PATHS.filter(isColour);
  expect(colours).toEqual([
    'finish.outside.colour',
    'finish.pocket.colour',
    'finish.lining.colour',
    'finish.edgeColour',
    'finish.thread',
    'finish.lace',
    'finish.ribbon',
  ]);
  for (const path of colours) {
    const reading = readField(path, '#ABC', 'mm');
    expect(reading).toMatchObject({ ok: true, value: [{ path, value: '#aabbcc' }] });
    expect(parseJob(patched(nth(EXAMPLE_JOBS, 0).document, reading.ok ? reading.value : [])).ok).toBe(true);
    expect(readField(path, 'brown', 'mm').ok).toBe(false);
  }
});
