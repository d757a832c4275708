import type { CSSProperties } from 'react';
import type { SegmentId } from '../../core/index.ts';
import type { StripLabel } from './stripLayout.ts';
import type { ZoneChoice } from './useZoneChoice.ts';
import './strip.css';

interface LabelButtonProps {
  readonly label: StripLabel;
  readonly zones: ZoneChoice;
  /** Its side of the drawing. */
  readonly side: 'above' | 'below' | 'beside';
  readonly style: CSSProperties;
}

/** Name and lengths of a stretch: pointing or focus highlights the stretch, a press chooses it. */
export function LabelButton({ label: { id, side: heard, lines }, zones, side, style }: LabelButtonProps) {
  return (
    <button
      type="button"
      className="strip-label"
      data-side={side}
      data-lit={isLit(zones, id) || undefined}
      aria-pressed={id === zones.chosen}
      style={style}
      onPointerEnter={() => zones.light(id)}
      onPointerLeave={() => zones.light(null)}
      onFocus={() => zones.light(id)}
      onBlur={() => zones.light(null)}
      onClick={() => zones.choose(id)}
    >
      <span className="only-heard">{heard} </span>
      {lines.map((line) => (
        <span key={line}>{line} </span>
      ))}
    </button>
  );
}

export const isLit = ({ lit, chosen }: ZoneChoice, id: SegmentId): boolean => id === lit || id === chosen;
