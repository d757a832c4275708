import type { SegmentId, StripSegment } from '../../core/index.ts';

interface SegmentBarProps {
  readonly segments: readonly StripSegment[];
  /** px of the place of a stretch. */
  readonly place: (at: number) => number;
  readonly top: number;
  readonly height: number;
  readonly isLit: (id: SegmentId) => boolean;
  readonly onHighlight?: (id: SegmentId | null) => void;
}

/** How far the marks of a gap stand out of the bar, px. */
const MARK = 3;

/** One row of stretches, each in its hatch. Gaps are drawn last, so that an overrun lies over the seat it runs into. */
export function SegmentBar({ segments, place, top, height, isLit, onHighlight }: SegmentBarProps) {
  const gaps = segments.filter(({ kind }) => kind === 'gap');
  const others = segments.filter(({ kind }) => kind !== 'gap');
  return (
    <>
      {[...others, ...gaps].map(({ id, kind, from, to, length }) => (
        <rect
          key={id}
          className="segment"
          data-kind={kind}
          data-overrun={length < 0 || undefined}
          data-lit={isLit(id) || undefined}
          x={place(Math.min(from, to))}
          y={top}
          width={Math.max(0.75, Math.abs(place(to) - place(from)))}
          height={height}
          onPointerEnter={() => onHighlight?.(id)}
          onPointerLeave={() => onHighlight?.(null)}
        />
      ))}
      {gaps.map(({ id, from, to, length }) => (
        <path
          key={id}
          className="gap-mark"
          data-overrun={length < 0 || undefined}
          d={[from, to].map((at) => `M${place(at)} ${top - MARK}v${height + 2 * MARK}`).join('')}
        />
      ))}
    </>
  );
}
