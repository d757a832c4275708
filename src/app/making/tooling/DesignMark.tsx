import type { KeyboardEvent, PointerEvent, ReactNode } from 'react';
import {
  designCopies,
  type MovableDesign,
  mostCopies,
  onCopy,
  type ToolingArea,
  type Vec2,
} from '../../../core/index.ts';
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
}

/** A title or drawing with all its copies. */
export function MovableMark({ design, shape, area, line, ...mark }: MovableMarkProps) {
  const { box, scale, points } = shape;
  const copies = designCopies(design, area.centre).slice(0, mostCopies(points));
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

/** How far the grips stand off the design, px, so that a finger can take a small design between them. */
const OFF = { turn: 36, scale: 12 };

type GripsProps = Pick<
  MovableMarkProps,
  'design' | 'shape' | 'area' | 'onGrab' | 'onDrag' | 'onRelease' | 'onCancel'
> & {
  /** mm a px of the screen. */
  readonly px: number;
};

/** The grips of the design in hand, at its first copy: a corner that scales it and a knob that turns it. Fields do the same. */
export function DesignGrips({ design, shape: { box, scale }, area, px, ...on }: GripsProps) {
  const place = onCopy(designCopies(design, area.centre)[0]!);
  const sheetAt = (u: number, v: number, off: Vec2 = [0, 0]): Vec2 => {
    const [x, y] = place([u * scale + off[0] * px, v * scale + off[1] * px]);
    return [x, area.size[1] - y];
  };
  const [top, turn] = [sheetAt(0, -box.y[0]), sheetAt(0, -box.y[0], [0, OFF.turn])];
  const corner = sheetAt(box.x[1], -box.y[1], [OFF.scale, -OFF.scale]);
  return (
    <g
      className="design-grips"
      onPointerDown={on.onGrab}
      onPointerMove={on.onDrag}
      onPointerUp={on.onRelease}
      onPointerCancel={on.onCancel}
    >
      <path d={`M${top.join()}L${turn.join()}`} />
      <Grip at={turn} px={px} grip="turn" />
      <Grip at={corner} px={px} grip="scale" />
    </g>
  );
}

interface GripProps {
  readonly at: Vec2;
  readonly px: number;
  readonly grip: 'scale' | 'turn';
}

const Grip = ({ at: [x, y], px, grip }: GripProps) => (
  <g className="design-grip" data-kind={grip} transform={`translate(${x} ${y}) scale(${px})`}>
    {grip === 'turn' ? <circle r={6} /> : <rect x={-5} y={-5} width={10} height={10} />}
    <circle className="grip-target" data-grip={grip} />
  </g>
);
