import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { Change } from '../pattern/coverOf.ts';
import { plainSource } from '../pattern/plainSource.ts';

/** The cover of `plainSource`, all of whose places are whole millimetres. */
export const plainCover = (change: Change = {}): CoverDesign => coverDesign(plainSource(change).job);
