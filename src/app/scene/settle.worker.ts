import {
  coverDesign,
  createSettleSolver,
  type FoldedCover,
  foldedCover,
  type Job,
  type Pose,
  type RangePoint,
  settledCover,
} from '../../core/index.ts';
import { serveQuestions } from '../worker/serveQuestions.ts';

export interface SettleQuestion {
  readonly job: Job;
  readonly point: RangePoint;
  readonly pose: Pose;
}

let last: { readonly of: string; readonly fold: (pose: SettleQuestion['pose']) => FoldedCover } | null = null;

// Another pose of the same cover reuses its crease, which is a solve of its own.
serveQuestions<SettleQuestion, FoldedCover>(({ job, point, pose }) => {
  const of = JSON.stringify([job, point]);
  if (last?.of !== of) {
    const design = coverDesign(job);
    const settle = settledCover(design, point, createSettleSolver());
    last = { of, fold: (at) => foldedCover(design, at, point, settle) };
  }
  return last.fold(pose);
});
