import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ironJob, jobWith, SIX_IRONS, strideFaults } from '../core/pattern/strideFaults.ts';
import { checkLaw } from '../laws.ts';
import { proofSize } from './proofSize.ts';

test('every hole of an iron is at whole strides or named, and every corner of a closed seam has one', () => {
  const counted = { sides: 0, whole: 0, fitted: [0, 0] };
  checkLaw(
    fc.property(ironJob, (drawn) => {
      for (const iron of SIX_IRONS) {
        const job = jobWith(drawn, iron);
        const { faults, whole, sides } = strideFaults(job);
        counted.sides += sides;
        counted.whole += whole;
        expect(faults).toEqual([]);
      }
    }),
    { cases: proofSize(500, 12) },
  );
  console.info(`${counted.whole} of ${counted.sides} sides are whole strides, the others named`);
});
