import { CutChances, type Doubted, loosestOf, type Spare } from '../../../src/core/doubt/spare.ts';
import { type CoverDesign, coverDesign } from '../../../src/core/fold/coverDesign.ts';
import type { Fit } from '../../../src/core/fold/coverFit.ts';
import type { FitDoubt } from '../../../src/core/fold/fitDoubt.ts';
import type { JobInput } from '../../../src/core/job/jobSchema.ts';
import { RANGE_POINTS, type RangePoint } from '../../../src/core/leather/leatherModel.ts';
import { normalQuantile } from '../../../src/core/math/normal.ts';
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

/** Mean and standard uncertainty, mm. */
type Length = readonly [mean: number, u: number];

/** A made-up doubt: lengths independent of each other, 95 in 100 wished. */
interface MadeUpDoubt {
  readonly closed?: Length;
  readonly flat?: Length;
  readonly height?: Length;
  /** Half of what the head has more than the tail, mm. */
  readonly lean?: number;
  readonly held?: Length;
  readonly loading?: Length;
  readonly next?: FitDoubt['next'];
}

/** A made-up doubt of a cover, by default one with room: 4 mm closed, 5 mm flat and 3 mm of height, each +- 1 mm. */
export function doubtful(design: CoverDesign, lengths: MadeUpDoubt = {}): FitDoubt {
  const { closed = [4, 1], flat = [5, 1], height = [3, 1], lean = 0, held = [60, 1], loading = [10, 1] } = lengths;
  const share = 0.95;
  const length = ([mean, u]: Length, input: number, by = 1): Doubted => ({
    mean: by * mean,
    u: by * u,
    slopes: [0, 0, 0, 0, 0].with(input, by * u),
  });
  const spare: Spare = { closed: length(closed, 0), flat: length(flat, 1), height: length(height, 2) };
  const covariance = spare.closed.slopes.map((_, i, all) => all.map((_, k) => (i === k ? 1 : 0)));
  const half = length(height, 2, 1 / 2);
  return {
    share,
    deviations: normalQuantile(share),
    spare,
    gaps: {
      foreEdge: { ...length(closed, 0, 1 / 2), room: closed[0] / 2 },
      head: { ...half, mean: half.mean + lean, room: half.mean },
      tail: { ...half, mean: half.mean - lean, room: half.mean },
    },
    held: length(held, 3),
    loading: length(loading, 4),
    chances: new CutChances({ covariance }, spare, loosestOf(design.job, lean)),
    next: lengths.next ?? (() => []),
  };
}

/** What a check of a made-up fit may look at; its doubt is that of the design unless it is given. */
export const contextOf = (design: CoverDesign, doubt: FitDoubt = design.fitDoubt): CheckContext => ({
  design,
  doubt,
  say: printer(design.job.work.units),
});
