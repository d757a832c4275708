import type { ElasticFit } from '../../core/fold/elasticFit.ts';
import type { RangePoint } from '../../core/leather/leatherModel.ts';

export type ElasticOverRange = Readonly<Record<RangePoint, ElasticFit>>;
