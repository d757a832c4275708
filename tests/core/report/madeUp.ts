import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { Fit } from '../../../src/core/fold/coverFit.ts';
import { fitDoubt } from '../../../src/core/fold/fitDoubt.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { RANGE_POINTS, type RangePoint } from '../../../src/core/leather/leatherModel.ts';
import type { CheckContext } from '../../../src/core/report/check.ts';
import { mm } from '../../../src/core/units/mm.ts';
import { printer } from '../../../src/core/units/printer.ts';
import { radians } from '../../../src/core/units/radians.ts';
import { soundJob } from '../../jobArbitrary.ts';

/** A laced cover of leather from 1.5 to 2 mm: the size of every piece is the tool's unless `rest` gives it. */
export const designOf = (rest: Partial<JobInput> = {}): CoverDesign =>
  coverDesign(
    soundJob({
      format: 'coverwright-job',
      version: 1,
      book: { width_mm: 165, height_mm: 240, thickness_mm: 28, boardThickness_mm: 2.5 },
      leather: { outside: { min_mm: 1.5, max_mm: 2 } },
      seam: { method: 'lacing' },
      ...rest,
    }),
  );

/** A fit with room everywhere: 4 mm closed and 5 mm flat, 1.5 mm at head and tail. */
const ROOMY: Fit = {
  foreEdge: { front: mm(2), back: mm(2) },
  closedSlack: mm(4),
  flatSlack: mm(5),
  head: mm(1.5),
  tail: mm(1.5),
  closes: true,
  staysOpen: radians(0),
  gape: mm(0),
  opensTo: radians(Math.PI),
  boardTravel: mm(0.5),
  pocket: { depth: mm(60), held: mm(50), loadingAngle: radians(1), loads: true },
  seats: true,
};

/** A fit that is `short` mm too short closed and stays open by half a radian. */
export const shortBy = (short: number): Partial<Fit> => ({
  closedSlack: mm(-short),
  closes: false,
  staysOpen: radians(0.5),
  gape: mm(12),
});

/** The design with made-up fits, so that each row can be judged by hand. */
export function fitted(design: CoverDesign, fits: Partial<Record<RangePoint, Partial<Fit>>> = {}): CoverDesign {
  const [thin, nominal, thick] = RANGE_POINTS.map((point) => ({ ...ROOMY, ...fits[point] }));
  return { ...design, fits: { thin: thin!, nominal: nominal!, thick: thick! } };
}

/** What a check of a made-up fit may look at; its doubt is that of the design. */
export const contextOf = (design: CoverDesign): CheckContext => ({
  design,
  doubt: fitDoubt(design),
  say: printer(design.job.work.units),
});
