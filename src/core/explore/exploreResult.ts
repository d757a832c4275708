import { isRestPart } from '../allowance/allowances.ts';
import type { Job } from '../job/jobSchema.ts';
import type { RangePoint } from '../leather/leatherModel.ts';
import { normalQuantile } from '../math/normal.ts';
import type { CheckId, FitAt, Report } from '../report/reportSchema.ts';

/** Limits of a result: where it begins to fit and to fail; between the two it is tight. */
export interface FitLimit {
  readonly fits: number;
  readonly fails: number;
  /** Which side of the limit fails. */
  readonly failing: 'below' | 'above';
  /** A gap from here on is too loose; of gaps alone. */
  readonly loosest?: number;
}

/** One part of a result that is a sum, as the report writes it out. */
export type ResultPart = Report['allowances']['foreEdge']['parts'][number];

/** One number that a report holds, for each end of the weight range or for the whole of it. */
export interface ExploreResult {
  readonly id: string;
  readonly group: 'chances' | 'gaps' | 'closing' | 'pockets' | 'allowances' | 'cut sizes' | 'leather';
  readonly title: string;
  readonly unit: 'mm' | 'deg' | '%' | '';
  /** Whether thin, middle and thick leather differ: a cut size is one for all. */
  readonly isRange: boolean;
  /** Null where the report has no such number, as an opening that is never reached. */
  readonly read: (report: Report, point: RangePoint) => number | null;
  /** Null where the number is not judged. */
  readonly limit: (report: Report) => FitLimit | null;
  /** The parts of a result that is a sum; none of any other. */
  readonly parts: (report: Report) => readonly ResultPart[];
}

const noLimit = (): null => null;
const noParts = (): readonly ResultPart[] => [];

/** Limit of a length in doubt, as `judged` judges it: at the middle of the leather. */
const within =
  (u: (doubt: Report['doubt']) => number) =>
  ({ doubt }: Report) =>
    ({ fits: normalQuantile(doubt.share) * u(doubt), fails: 0, failing: 'below' }) as const;

/** A gap of an edge, which may also be too loose. */
const gapOf = (edge: 'foreEdge' | 'head' | 'tail') => (report: Report) => ({
  ...within(({ edges }) => (edge === 'foreEdge' ? edges.foreEdge.u_mm / 2 : edges[edge].u_mm))(report),
  loosest: (report.job as Job).loosest[`${edge}_mm`],
});

const atLeast = (limit: number) => ({ fits: limit, fails: limit, failing: 'below' }) as const;
const atMost = (limit: number) => ({ fits: limit, fails: limit, failing: 'above' }) as const;

/** A chance: fits from the wished one on, and fails where it is less likely than not. */
const wished = ({ doubt }: Report) => ({ fits: doubt.share, fails: 1 / 2, failing: 'below' }) as const;

const checkOf = ({ checks }: Report, id: CheckId) => checks.find((check) => check.id === id)!;

/** The limit of a check without measuring error. */
const limitOf =
  (id: CheckId) =>
  (report: Report): FitLimit | null => {
    const { limit, bound } = checkOf(report, id);
    if (bound === null) return null;
    return bound === 'atMost' ? atMost(limit) : atLeast(limit);
  };

const perPoint = (
  group: ExploreResult['group'],
  id: string,
  title: string,
  unit: ExploreResult['unit'],
  read: (fit: FitAt) => number | null,
  limit: ExploreResult['limit'] = noLimit,
): ExploreResult => ({
  id,
  group,
  title,
  unit,
  isRange: true,
  read: ({ fit }, point) => read(fit[point]),
  limit,
  parts: noParts,
});

const single = (
  group: ExploreResult['group'],
  id: string,
  title: string,
  unit: ExploreResult['unit'],
  read: (report: Report) => number | null,
  limit: ExploreResult['limit'] = noLimit,
): ExploreResult => ({ id, group, title, unit, isRange: false, read, limit, parts: noParts });

/**
 * An allowance with the parts that it is the sum of. What rounding adds to the cut is left out: it jumps with every step of
 * the cut size and hides what the leather asks for.
 */
function allowance(edge: keyof Report['allowances'], id: string, title: string): ExploreResult {
  const parts = ({ allowances }: Report) => allowances[edge].parts.filter(({ name }) => !isRestPart(name));
  const read = (report: Report): number => parts(report).reduce((sum, { length_mm }) => sum + length_mm, 0);
  return { ...single('allowances', id, title, 'mm', read), parts };
}

/** What a job can be explored for. Gap is positive, overrun negative. Every number and limit is the report's own. */
export const EXPLORE_RESULTS: readonly ExploreResult[] = [
  single('chances', 'chanceFits', 'Covers that fit', '%', ({ doubt }) => doubt.chance.fits, wished),
  single('chances', 'chanceCloses', 'Covers that close', '%', ({ doubt }) => doubt.chance.closes, wished),
  perPoint(
    'gaps',
    'foreEdge',
    'Fore-edge gap, shared evenly',
    'mm',
    ({ closed }) => closed.slack_mm / 2,
    gapOf('foreEdge'),
  ),
  perPoint('gaps', 'front', 'Front fore-edge gap, as the boards sit', 'mm', ({ foreEdge }) => foreEdge.front_mm),
  perPoint('gaps', 'back', 'Back fore-edge gap, as the boards sit', 'mm', ({ foreEdge }) => foreEdge.back_mm),
  perPoint('gaps', 'head', 'Head gap', 'mm', ({ head_mm }) => head_mm, gapOf('head')),
  perPoint('gaps', 'tail', 'Tail gap', 'mm', ({ tail_mm }) => tail_mm, gapOf('tail')),
  perPoint(
    'closing',
    'closedSlack',
    'Spare wrap, closed',
    'mm',
    ({ closed }) => closed.slack_mm,
    within(({ edges }) => edges.foreEdge.u_mm),
  ),
  perPoint(
    'closing',
    'flatSlack',
    'Spare wrap, lying open',
    'mm',
    ({ flat }) => flat.slack_mm,
    within(({ flat }) => flat.u_mm),
  ),
  perPoint(
    'closing',
    'staysOpen',
    'Stays open',
    'deg',
    ({ closed }) => closed.staysOpen_deg,
    () => atMost(0),
  ),
  perPoint(
    'closing',
    'gape',
    'Fore-edges apart',
    'mm',
    ({ closed }) => closed.gape_mm,
    () => atMost(0),
  ),
  perPoint(
    'closing',
    'opensTo',
    'Opens to',
    'deg',
    ({ flat }) => flat.opensTo_deg,
    () => atLeast(180),
  ),
  perPoint(
    'pockets',
    'held',
    'Board held in its pocket',
    'mm',
    ({ pockets }) => pockets.held_mm,
    limitOf('pocketHolds'),
  ),
  perPoint(
    'pockets',
    'loadingAngle',
    'Bend back to load',
    'deg',
    ({ pockets }) => pockets.loadingAngle_deg,
    limitOf('pocketLoads'),
  ),
  perPoint('pockets', 'boardTravel', 'Board travel', 'mm', ({ flat }) => flat.boardTravel_mm),
  single('pockets', 'pocketDepth', 'Pocket depth', 'mm', ({ fit }) => fit.thick.pockets.depth_mm),
  allowance('foreEdge', 'foreEdgeAllowance', 'Fore-edge allowance'),
  allowance('head', 'headAllowance', 'Head allowance'),
  allowance('tail', 'tailAllowance', 'Tail allowance'),
  single('cut sizes', 'outsideWidth', 'Outside, width', 'mm', ({ pattern }) => pattern.outside.width_mm),
  single('cut sizes', 'outsideHeight', 'Outside, height', 'mm', ({ pattern }) => pattern.outside.height_mm),
  single('cut sizes', 'pocketWidth', 'Pocket, width', 'mm', ({ pattern }) => pattern.pocket.width_mm),
  single('cut sizes', 'liningWidth', 'Lining, width', 'mm', ({ pattern }) => pattern.lining?.width_mm ?? null),
  single('leather', 'closedWrap', 'Wrap, closed', 'mm', ({ wrap }) => wrap.closed_mm),
  single('leather', 'flatWrap', 'Wrap, lying open', 'mm', ({ wrap }) => wrap.flat_mm),
  single(
    'leather',
    'strain',
    'Stretch of the grain at the folds',
    '',
    (report) => checkOf(report, 'foldStrain').value,
    limitOf('foldStrain'),
  ),
];
