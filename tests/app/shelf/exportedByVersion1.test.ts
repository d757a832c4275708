import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readShelfFile } from '../../../src/app/shelf/shelfFile.ts';
import { coverDesign } from '../../../src/core/fold/coverDesign.ts';
import { openJob } from '../../../src/core/job/openJob.ts';
import { readShareFragment } from '../../../src/output/shareLink/shareLink.ts';
import { nth } from '../../nth.ts';

/**
 * A shelf that the last edition with version 1 of the job exported, the links that it made of the same jobs, and the sizes that it
 * cut them to: width and height of the outside and depth of the pockets, mm. No later edition may rewrite them.
 */
const EXPORTED = readFileSync(join(import.meta.dirname, 'exportedByVersion1.txt'), 'utf8');
const MADE_THEN = [
  { name: 'Tide ledger', link: 'ePlvp8i-IzUoQ4AOVgAWTOlAL4yGKq5QBQB9p293', cut: [382.5, 260.5, 85.5] },
  {
    name: 'Choir book',
    link: 'ePlvp8i-IzUonTPyM4sUwKFJZKCCymHkQAW1ZlAD1RRU3GMGKrCsJTZBEAxVQjmRxOICfwlESR4AAG-tgXQ',
    cut: [380, 237, 77.5],
  },
  {
    name: 'Shore guide',
    link: 'ePlvp8i-IzUog4Ht5lSF9FKQuzFCFTnfIwWrITDQkILV0AKYa1CD1RDYsqBiQUFKIgQ2iJBDxRiYRWtrAZOLXAQ',
    cut: [268, 197, 60.5],
  },
  {
    name: 'Typed ledger',
    link: 'ePlvp8i-IzUoQyqB7VIFYMmUDvTDYAlWvMWpsRnQ9YgCEhjCgy8acOVaUPEGz7fg8g0AlCqMrQ',
    cut: [383.5, 260, 85.5],
  },
] as const;

test('a shelf and links of version 1 of the job open with the sizes that they were cut to then', () => {
  const { documents, broken } = readShelfFile(EXPORTED);
  expect(broken).toEqual([]);
  expect(documents.map(({ name }) => name)).toEqual(MADE_THEN.map(({ name }) => name));
  MADE_THEN.forEach(({ link, cut }, i) => {
    for (const opened of [openJob(nth(documents, i)), readShareFragment(`#job=1.${link}`)]) {
      if (!opened.ok) throw new Error(JSON.stringify(opened.issues));
      const { outside, pocketDepth } = coverDesign(opened.job).pieces;
      expect([outside.width, outside.height, pocketDepth]).toEqual(cut);
    }
  });
});
