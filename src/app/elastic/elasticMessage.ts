import type { ElasticFit } from '../../core/fold/elasticFit.ts';
import type { Job } from '../../core/job/jobSchema.ts';
import type { RangePoint } from '../../core/leather/leatherModel.ts';

export type ElasticOverRange = Readonly<Record<RangePoint, ElasticFit>>;

export interface ElasticQuestion {
  readonly id: number;
  readonly job: Job;
}

export interface ElasticAnswer {
  readonly id: number;
  readonly elastic: ElasticOverRange;
}
