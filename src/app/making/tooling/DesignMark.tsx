import type { KeyboardEvent, PointerEvent, ReactNode } from 'react';
import { designCopies, type MovableDesign, onCopy, type ToolingArea, type Vec2 } from '../../../core/index.ts';
import type { DesignShape } from './designShape.ts';

interface MarkProps {
  readonly name: string;
  readonly isChosen: boolean;
  readonly isWarned: boolean;
  readonly onGrab: (event: PointerEvent<Element>) => void;
  readonly onDrag: (event: PointerEvent) => void;
  readonly onRelease: () => void;
  readonly onCancel: () => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly onFocus: () => void;
  readonly onBlur: () => void;
}

/** What is grabbed, chosen and moved: a group that takes the focus in its turn. */
function Mark({ name, isChosen, isWarned, children, ...on }: MarkProps & { readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a drawing
    <g
      className="design-mark"
      role="button"
      tabIndex={0}
      aria-label={name}
      aria-pressed={isChosen}
      data-warned={isWarned || undefined}
      onPointerDown={on.onGrab}
      onPointerMove={on.onDrag}
      onPointerUp={on.onRelease}
      onPointerCancel={on.onCancel}
      onKeyDown={on.onKeyDown}
      onFocus={on.onFocus}
      onBlur={on.onBlur}
    >
      {children}
    </g>
  );
}

interface BorderMarkProps extends MarkProps {
  readonly lines: readonly (readonly Vec2[])[];
  readonly area: ToolingArea;
  /** Width of a line, mm. */
  readonly line: number;
}

/** A border, grabbed by its lines. */
export function BorderMark({ lines, area, line, ...mark }: BorderMarkProps) {
  const data = lines.map((points) => `M${points.map(([x, y]) => `${x},${area.size[1] - y}`).join(' ')}`).join('');
  return (
    <Mark {...mark}>
      <path className="design-target" d={data} />
      <path className="design-line" d={data} style={{ strokeWidth: line }} />
    </Mark>
  );
}

interface MovableMarkProps extends MarkProps {
  readonly design: MovableDesign;
  readonly shape: DesignShape;
  readonly area: ToolingArea;
  /** Width of a line, mm. */
  readonly line: number;
  /** mm a px of the screen. */
  readonly px: number;
}

/** Distance of the grip that turns a design from its upper edge, px. */
const TURN_GRIP = 26;

/** A title or drawing with all its copies; chosen, with a corner that scales and a grip that turns. */
export function MovableMark({ design, shape, area, line, px, ...mark }: MovableMarkProps) {
  const copies = designCopies(design, area.centre);
  const { box, scale } = shape;
  const [first] = copies;
  const sheetAt = ([u, v]: Vec2): Vec2 => {
    const [x, y] = onCopy(first!)([u * scale, v * scale]);
    return [x, area.size[1] - y];
  };
  const corner = sheetAt([box.x[1], -box.y[1]]);
  const top = sheetAt([0, -box.y[0]]);
  const turn = sheetAt([0, -box.y[0] + (TURN_GRIP * px) / scale]);
  return (
    <Mark {...mark}>
      {copies.map(({ at: [x, y], turn: degrees, mirrored }) => (
        <g
          key={`${x} ${y}`}
          transform={`translate(${x} ${area.size[1] - y}) rotate(${-degrees}) scale(${mirrored ? -scale : scale} ${scale})`}
        >
          <rect
            className="design-target"
            x={box.x[0]}
            y={box.y[0]}
            width={box.x[1] - box.x[0]}
            height={box.y[1] - box.y[0]}
          />
          <Drawn shape={shape} line={line} />
        </g>
      ))}
      {mark.isChosen && (
        <g className="design-grips">
          <path d={`M${top.join()}L${turn.join()}`} />
          <Grip at={turn} px={px} grip="turn" />
          <Grip at={corner} px={px} grip="scale" />
        </g>
      )}
    </Mark>
  );
}

/** The lines of a design in its own units: they stay as they are while it is moved. */
function Drawn({ shape, line }: { readonly shape: DesignShape; readonly line: number }) {
  const { box, data, picture, scale } = shape;
  if (picture !== null)
    return (
      <image
        href={picture}
        x={box.x[0]}
        y={box.y[0]}
        width={box.x[1] - box.x[0]}
        height={box.y[1] - box.y[0]}
        preserveAspectRatio="none"
      />
    );
  return <path className="design-line" d={data} style={{ strokeWidth: line / scale }} />;
}

interface GripProps {
  readonly at: Vec2;
  readonly px: number;
  readonly grip: 'scale' | 'turn';
}

/** A round grip that turns, a square one that scales; fields do the same, so a keyboard does not stop at them. */
const Grip = ({ at: [x, y], px, grip }: GripProps) => (
  <g className="design-grip" data-kind={grip} transform={`translate(${x} ${y}) scale(${px})`}>
    {grip === 'turn' ? <circle r={6} /> : <rect x={-5} y={-5} width={10} height={10} />}
    <circle className="grip-target" data-grip={grip} />
  </g>
);
