import { type ReactNode, useId, useMemo } from 'react';
import {
  type CoverDesign,
  type Drawing,
  mirroredDrawing,
  type PieceDrawing,
  turnAxis,
} from '../../../../core/index.ts';
import { PieceShapes } from '../../../sheet/PieceShapes.tsx';
import { useWidth } from '../../../sheet/useExtent.ts';

/** Height of the lettering, px. */
const LETTERING = 14;

interface AssembledPictureProps {
  readonly design: CoverDesign;
  readonly drawing: Drawing;
  /** What it shows, in words. */
  readonly label: string;
  /** Drawn over it, in mm from the front cut edge and from the head; `text` is the height of the lettering. */
  readonly over?: (text: number) => ReactNode;
}

/** The open cover from its inside, head up and front at the left: lining and pockets laid on, or the ends folded in. */
export function AssembledPicture({ design, drawing, label, over }: AssembledPictureProps) {
  const [ref, room] = useWidth<HTMLDivElement>();
  const inside = useMemo(() => mirroredDrawing(drawing), [drawing]);
  const piece = (id: PieceDrawing['id'], of = inside): PieceDrawing | undefined =>
    of.pieces.find((each) => each.id === id);
  const outside = piece('outside')!;
  const { width, height } = outside;
  const text = (LETTERING * width) / Math.max(120, room - 4 * LETTERING);
  const pad = 2.4 * text;
  // The lining lies as in its own drawing, and the front pocket too: grain side toward the book.
  const [lining, pocket] = [piece('lining', drawing), piece('pocket', drawing)];
  // Where the made cover begins; middle of the pocket, or of the end that is folded in.
  const edge = pocket === undefined ? turnAxis(design) : 0;
  const front = edge === 0 ? (pocket?.width ?? 0) / 2 : 1.5 * edge;
  return (
    <div ref={ref}>
      <svg
        className="drawing assembled"
        viewBox={`${edge - pad} ${-pad} ${width - 2 * edge + 2 * pad} ${height + 2 * pad}`}
        role="img"
        aria-label={label}
        fontSize={text}
      >
        {pocket === undefined ? (
          <Turned outside={outside} axis={edge} lining={lining} />
        ) : (
          <>
            <Shape part="outside" piece={outside} />
            {lining && <Shape part="lining" piece={lining} transform={`translate(${(width - lining.width) / 2} 0)`} />}
            <Shape part="pocket" piece={pocket} />
            <Shape part="pocket" piece={pocket} transform={`translate(${width} 0) scale(-1 1)`} />
          </>
        )}
        {over?.(text)}
        <g className="place-names">
          <text x={front} y={height / 3}>
            front
          </text>
          <text x={width - front} y={height / 3}>
            back
          </text>
        </g>
      </svg>
    </div>
  );
}

interface ShapeProps {
  readonly part: 'outside' | 'lining' | 'pocket';
  readonly piece: PieceDrawing;
  readonly transform?: string;
}

const CUT = ['cut'] as const;

const Shape = ({ part, piece, transform }: ShapeProps) => (
  <g data-part={part} transform={transform}>
    <PieceShapes piece={piece} layers={CUT} hasWords={false} />
  </g>
);

interface TurnedProps {
  readonly outside: PieceDrawing;
  /** Middle of the fold, mm from the cut edge. */
  readonly axis: number;
  readonly lining: PieceDrawing | undefined;
}

/** The outside with its ends folded in: each end mirrored in its fold, over what lies between the folds. */
function Turned({ outside, axis, lining }: TurnedProps) {
  const id = useId();
  const { width, height } = outside;
  return (
    <>
      <clipPath id={`${id}-between`}>
        <rect x={axis} y={-1} width={width - 2 * axis} height={height + 2} />
      </clipPath>
      <clipPath id={`${id}-end`}>
        <rect x={-1} y={-1} width={axis + 1} height={height + 2} />
      </clipPath>
      <g clipPath={`url(#${id}-between)`}>
        <Shape part="outside" piece={outside} />
      </g>
      {lining && <Shape part="lining" piece={lining} transform={`translate(${(width - lining.width) / 2} 0)`} />}
      {[`translate(${2 * axis} 0) scale(-1 1)`, `translate(${width - 2 * axis} 0)`].map((transform) => (
        <g key={transform} transform={transform}>
          <g clipPath={`url(#${id}-end)`}>
            <Shape part="pocket" piece={outside} />
          </g>
        </g>
      ))}
      {[axis, width - axis].map((x) => (
        <path key={x} d={`M${x} 0V${height}`} />
      ))}
    </>
  );
}
