import type { Tick } from './rulerTicks.ts';
import { SegmentBar } from './SegmentBar.tsx';
import type { Segment } from './segments.ts';
import { BAR, type StripLabel, stripLayout } from './stripLayout.ts';

export interface StripRow {
  readonly title: string;
  readonly segments: readonly Segment[];
}

interface StripDrawingProps {
  /** The row that the labels belong to comes first. */
  readonly rows: readonly StripRow[];
  readonly labels: readonly StripLabel[];
  readonly ticks: readonly Tick[];
  /** px to draw in. */
  readonly room: number;
  /** Length of the outside, mm. */
  readonly span: number;
  readonly highlight: string | null;
  readonly chosen: string | null;
  readonly onHighlight: (id: string | null) => void;
  readonly onChoose: (id: string) => void;
}

/** Rows of stretches to one scale over a ruler; the labels carry names and lengths and can be reached by key. */
export function StripDrawing(props: StripDrawingProps) {
  const { rows, labels, ticks, room, span, highlight, chosen, onHighlight, onChoose } = props;
  const layout = stripLayout(rows[0]!.segments, labels, rows.length, room, span);
  const { place, ruler } = layout;
  const isLit = (id: string): boolean => id === highlight || id === chosen;
  return (
    <div className="strip-drawing" style={{ height: layout.height, width: layout.width }}>
      <svg width={layout.width} height={layout.height} aria-hidden="true">
        {rows.map(({ title, segments }, index) => (
          <g key={title}>
            <SegmentBar
              segments={segments}
              place={place}
              top={layout.rows[index]!}
              height={BAR}
              isLit={isLit}
              onHighlight={onHighlight}
            />
            {segments
              .filter(({ id }) => id === 'frontBoard')
              .map(({ id, from, to }) => (
                <text key={id} className="row-title" x={place((from + to) / 2)} y={layout.rows[index]! + BAR / 2 + 4}>
                  {title}
                </text>
              ))}
          </g>
        ))}
        {layout.labels.map(({ id, leader: { from, to } }) => (
          <path key={id} className={isLit(id) ? 'leader lit' : 'leader'} d={`M${from.join(' ')}L${to.join(' ')}`} />
        ))}
        <path className="ruler" d={`M${place(0)} ${ruler}H${place(span)}`} />
        {ticks.map(({ at, text }) => (
          <g key={at} className="ruler">
            <path d={`M${place(at)} ${ruler}v${text === null ? 4 : 7}`} />
            {text !== null && (
              <text x={place(at)} y={ruler + 17} textAnchor="middle">
                {text}
              </text>
            )}
          </g>
        ))}
      </svg>
      {layout.labels.map(({ id, lines, heard, centre, width, top }) => (
        <button
          key={id}
          type="button"
          className={`strip-label${isLit(id) ? ' lit' : ''}${top > 0 ? ' below' : ''}`}
          aria-pressed={id === chosen}
          aria-label={heard}
          style={{ left: centre - width / 2, top, width, height: layout.labelHeight }}
          onPointerEnter={() => onHighlight(id)}
          onPointerLeave={() => onHighlight(null)}
          onFocus={() => onHighlight(id)}
          onBlur={() => onHighlight(null)}
          onClick={() => onChoose(id)}
        >
          {lines.map((line) => (
            <span key={line}>{line} </span>
          ))}
        </button>
      ))}
    </div>
  );
}
