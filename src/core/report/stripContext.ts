import type { ElasticFit } from '../fold/elastic/elasticFit.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import type { CheckContext } from './check.ts';

/** The elastic strip's results over the weight range. */
export type ElasticOverRange = Readonly<Record<RangePoint, ElasticFit>>;

/** What a row of the elastic strip may look at. */
export interface StripContext extends CheckContext {
  readonly elastic: ElasticOverRange;
}
