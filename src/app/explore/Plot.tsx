import type { FitLimit } from '../../core/index.ts';
import type { AxisTick } from './axisTicks.ts';
import { bandPath, linePath, type PlotFrame, type PlotPoint, type StackedPart } from './chartLayout.ts';

/** Depth of the hatching on the failing side of a limit, px. */
const HATCH = 9;

interface AxesProps {
  readonly frame: PlotFrame;
  readonly across: readonly AxisTick[];
  readonly upright: readonly AxisTick[];
  readonly title: string;
  readonly uprightTitle: string;
}

/** Scale below, figures at the left, light lines across. */
export function Axes({ frame: { left, right, top, bottom, x, y }, across, upright, title, uprightTitle }: AxesProps) {
  return (
    <g>
      {upright.map(({ at, text }) => (
        <g key={at}>
          <path className={Math.abs(at) < 1e-9 ? 'plot-zero' : 'plot-rule'} d={`M${left} ${y(at)}H${right}`} />
          <text x={left - 7} y={y(at) + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      <path className="plot-edge" d={`M${left} ${top}V${bottom}H${right}`} />
      {across.map(({ at, text }) => (
        <g key={at}>
          <path className="plot-edge" d={`M${x(at)} ${bottom}v6`} />
          <text x={x(at)} y={bottom + 18} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      <text className="plot-title" x={8} y={16}>
        {uprightTitle}
      </text>
      <text className="plot-title" x={(left + right) / 2} y={bottom + 36} textAnchor="middle">
        {title}
      </text>
    </g>
  );
}

/** Range band with its thin, middle and thick lines; one line where the weight range makes no difference. */
export function CurveBand({ runs, frame, isRange }: { runs: Runs; frame: PlotFrame; isRange: boolean }) {
  return (
    <g>
      {runs.map((run) => (
        <g key={run[0]!.at}>
          {isRange && <path className="plot-band" d={bandPath(run, frame, largest, smallest)} />}
          {isRange && <path className="plot-thin" d={linePath(run, frame, ({ thin }) => thin)} />}
          {isRange && <path className="plot-middle" d={linePath(run, frame, ({ nominal }) => nominal)} />}
          <path className="plot-thick" d={linePath(run, frame, ({ thick }) => thick)} />
        </g>
      ))}
    </g>
  );
}

/** Least height of a part that holds its name, px. */
const NAME_HEIGHT = 13;

/** Parts of a sum as bands, named at the right end of the curve. */
export function PartBands({ runs, frame, parts }: { runs: Runs; frame: PlotFrame; parts: readonly StackedPart[] }) {
  const last = runs.at(-1)?.at(-1);
  if (last === undefined) return null;
  return (
    <g>
      {parts.map(({ name, lower, upper }, i) => {
        const [bottom, top] = [frame.y(lower(last)), frame.y(upper(last))];
        return (
          <g key={name}>
            {runs.map((run) => (
              <path
                key={run[0]!.at}
                className={i % 2 === 0 ? 'plot-part' : 'plot-part dark'}
                d={bandPath(run, frame, upper, lower)}
              />
            ))}
            {bottom - top >= NAME_HEIGHT && (
              <text x={frame.x(last.at) - 6} y={(bottom + top) / 2 + 4} textAnchor="end">
                {name}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

type Runs = readonly (readonly PlotPoint[])[];

const largest = ({ thin, nominal, thick }: PlotPoint): number => Math.max(thin, nominal, thick);
const smallest = ({ thin, nominal, thick }: PlotPoint): number => Math.min(thin, nominal, thick);

/** A second job over the first: its thin and thick end in dashed lines. */
export function OverlayCurve({ runs, frame, isRange }: { runs: Runs; frame: PlotFrame; isRange: boolean }) {
  return (
    <g className="plot-overlay">
      {runs.map((run) => (
        <g key={run[0]!.at}>
          {isRange && <path d={linePath(run, frame, ({ thin }) => thin)} />}
          <path d={linePath(run, frame, ({ thick }) => thick)} />
        </g>
      ))}
    </g>
  );
}

/**
 * Limit beyond which the result fails, hatched on that side; the one from which it fits, by the chance wished; the
 * loosest gap where there is one.
 */
export function LimitLine({ runs, frame }: { runs: Runs; frame: PlotFrame }) {
  const limit = limitOf(runs);
  if (limit === null) return null;
  const fails = (point: PlotPoint): number => point.limit!.fails;
  return (
    <g className="plot-limit">
      {runs.map((run) => (
        <g key={run[0]!.at}>
          <path className="plot-failing" d={bandPath(run, frame, fails, fails, hatchSide(limit))} />
          <path className="plot-fails" d={linePath(run, frame, fails)} />
          {isTight(limit) && <path className="plot-fits" d={linePath(run, frame, ({ limit: at }) => at!.fits)} />}
          {isLooseShown(limit, frame) && (
            <path className="plot-fits" d={linePath(run, frame, ({ limit: at }) => at!.loosest!)} />
          )}
        </g>
      ))}
    </g>
  );
}

/** Names of the limits, drawn over the curves: at the end where the curve is farther from them. */
export function LimitNames({ runs, frame }: { runs: Runs; frame: PlotFrame }) {
  const [first, last] = [runs[0]?.[0], runs.at(-1)?.at(-1)];
  if (!first?.limit || !last?.limit) return null;
  const clearance = (point: PlotPoint): number =>
    Math.min(
      ...[point.limit!.fits, point.limit!.fails].flatMap((limit) =>
        [point.thin, point.thick].map((value) => Math.abs(frame.y(value) - frame.y(limit))),
      ),
    );
  const isAtEnd = clearance(last) > clearance(first);
  const limit = isAtEnd ? last.limit : first.limit;
  const place = isAtEnd ? ({ x: frame.right - 8, textAnchor: 'end' } as const) : { x: frame.left + 8 };
  const side = hatchSide(limit);
  const line = frame.y(limit.fails);
  const hatched = line + (side > 0 ? side + 12 : side - 4);
  const isOutside = hatched > frame.bottom - 3 || hatched < frame.top + 8;
  return (
    <g className="plot-limit">
      <text {...place} y={isOutside ? line + (side > 0 ? -5 : 13) : hatched}>
        {limit.failing === 'below' ? 'fails below' : 'fails above'}
      </text>
      {isTight(limit) && (
        <text {...place} y={frame.y(limit.fits) + (side > 0 ? -5 : 13)}>
          {limit.failing === 'below' ? 'fits above' : 'fits below'}
        </text>
      )}
      {isLooseShown(limit, frame) && (
        <text {...place} y={frame.y(limit.loosest!) - 5}>
          too loose above
        </text>
      )}
    </g>
  );
}

const isLooseShown = ({ loosest }: FitLimit, { high, top, y }: PlotFrame): boolean =>
  loosest !== undefined && loosest < high && y(loosest) > top + 14;
const limitOf = (runs: Runs): FitLimit | null => runs[0]?.[0]?.limit ?? null;
const hatchSide = ({ failing }: FitLimit): number => (failing === 'below' ? HATCH : -HATCH);
const isTight = ({ fits, fails }: FitLimit): boolean => fits !== fails;
