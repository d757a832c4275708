import { elasticOverRange } from '../../core/fit.ts';
import { coverDesign } from '../../core/fold/coverDesign.ts';
import { createStripSolver } from '../../core/fold/strip/solveStrip.ts';
import type { ElasticAnswer, ElasticQuestion } from './elasticMessage.ts';

const solver = createStripSolver();

self.onmessage = ({ data: { id, job } }: MessageEvent<ElasticQuestion>) => {
  const answer: ElasticAnswer = { id, elastic: elasticOverRange(coverDesign(job), solver) };
  self.postMessage(answer);
};
