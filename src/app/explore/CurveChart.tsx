import { EXPLORE_RESULTS } from '../../core/index.ts';
import { useWidth } from '../sheet/useExtent.ts';
import { useLengths } from '../state/BenchContext.tsx';
import { axisTicks } from './axisTicks.ts';
import { type PlotPoint, plotFrame, stackedParts, stretches } from './chartLayout.ts';
import { fieldName } from './fieldWords.ts';
import { type Figure, fieldFigure, resultFigure, withUnit } from './figure.ts';
import { Axes, CurveBand, LimitLine, LimitNames, OverlayCurve, PartBands } from './Plot.tsx';
import type { Answered } from './useExplored.ts';

interface CurveChartProps {
  readonly answered: Answered<'curve'>;
  /** Name of the job laid over. */
  readonly overlayName: string;
  /** Value of the field at which the curve is read. */
  readonly reading: number;
  readonly onRead: (at: number) => void;
}

/** Height of the chart, px, in a narrow and in a wide room. */
const HEIGHT = { narrow: 316, wide: 400 };
/** From here on a room is wide, px; as in the style sheet. */
const WIDE = 800;

const bracketed = (figure: Figure): Figure => ({ ...figure, unit: figure.unit === '' ? '' : `(${figure.unit})` });

/** Result against field: range band, limits, the present job, and a second job laid over it. */
export function CurveChart({ answered: { question, answer }, overlayName, reading, onRead }: CurveChartProps) {
  const lengths = useLengths();
  const [ref, width] = useWidth<HTMLDivElement>();
  const result = EXPLORE_RESULTS.find(({ id }) => id === question.resultId)!;
  const { field, points } = answer.curve;
  const runs = stretches(points);
  const overlaid = answer.overlay === null ? [] : stretches(answer.overlay.points);
  const [across, upright] = [fieldFigure(field, lengths), resultFigure(result, lengths)];
  const height = width < WIDE ? HEIGHT.narrow : HEIGHT.wide;
  const frame = plotFrame([...runs, ...overlaid].flat(), question.range, width, height);
  const { x, y, left, right, top, bottom } = frame;
  const present = runs.flat().find(({ at }) => at === field.present);
  const pinned = overlaid.flat().find(({ at }) => at === answer.overlay?.field.present);
  const read = runs.flat().find(({ at }) => at === reading);
  const ends = (point: PlotPoint): readonly number[] => [
    ...new Set(result.isRange ? [point.thin, point.thick] : [point.thick]),
  ];

  return (
    <div ref={ref} className="explore-plot">
      {width > 0 && (
        <svg
          width={width}
          height={height}
          aria-hidden="true"
          onPointerMove={(event) => {
            const px = event.clientX - event.currentTarget.getBoundingClientRect().left;
            if (event.pointerType === 'mouse' && px >= left && px <= right)
              onRead(question.range.from + ((px - left) / (right - left)) * (question.range.to - question.range.from));
          }}
        >
          <Axes
            frame={frame}
            across={axisTicks(question.range.from, question.range.to, across, Math.max(2, (right - left) / 64))}
            upright={axisTicks(frame.low, frame.high, upright, 6)}
            uprightTitle={`${withUnit(result.title, bracketed(upright))}${result.group === 'gaps' ? ', under 0 overrun' : ''}`}
            title={withUnit(fieldName(field), bracketed(across))}
          />
          <PartBands runs={runs} frame={frame} parts={stackedParts(runs.flat())} />
          <LimitLine runs={runs} frame={frame} />
          <CurveBand runs={runs} frame={frame} isRange={result.isRange} />
          <OverlayCurve runs={overlaid} frame={frame} isRange={result.isRange} />
          <LimitNames runs={runs} frame={frame} />
          {result.isRange && <EndNames last={runs.at(-1)?.at(-1)} x={right} y={y} />}
          {pinned !== undefined && (
            <g className="plot-overlay">
              {ends(pinned).map((value) => (
                <circle key={value} cx={x(pinned.at)} cy={y(value)} r={3} />
              ))}
            </g>
          )}
          {present !== undefined && (
            <g className="plot-present">
              <path d={`M${x(present.at)} ${top - 4}V${bottom}`} />
              <text x={x(present.at)} y={top - 8} textAnchor="middle">
                this job
              </text>
              {ends(present).map((value) => (
                <circle key={value} cx={x(present.at)} cy={y(value)} r={3.5} />
              ))}
            </g>
          )}
          {read !== undefined && read !== present && (
            <g className="plot-read">
              <path d={`M${x(read.at)} ${top}V${bottom}`} />
              {ends(read).map((value) => (
                <circle key={value} cx={x(read.at)} cy={y(value)} r={3.5} />
              ))}
            </g>
          )}
        </svg>
      )}
      {overlaid.length > 0 && (
        <p className="plot-key">
          <svg aria-hidden="true" viewBox="0 0 40 8">
            <path d="M0 4H40" />
          </svg>{' '}
          {overlayName}
          {result.isRange && ', thin and thick'}
        </p>
      )}
    </div>
  );
}

/** Least distance between two names, px. */
const LINE = 13;

/** Names of the band's edges, at its right end. */
function EndNames({ last, x, y }: { last: PlotPoint | undefined; x: number; y: (value: number) => number }) {
  if (last === undefined) return null;
  const [thin, thick] = [y(last.thin), y(last.thick)];
  const middle = (thin + thick) / 2;
  const apart = Math.max(LINE, Math.abs(thin - thick)) / 2;
  const up = thin <= thick ? -apart : apart;
  return (
    <g className="plot-ends">
      <text x={x + 6} y={middle + up + 4}>
        thin
      </text>
      <text x={x + 6} y={middle - up + 4}>
        thick
      </text>
    </g>
  );
}
