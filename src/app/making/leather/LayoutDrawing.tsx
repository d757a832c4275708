import { addScaled, heading, type PlacedPiece, type Vec2 } from '../../../core/index.ts';
import { scaleBar } from '../../../output/layout/scaleBar.ts';
import { useWidth } from '../../sheet/useExtent.ts';
import { useLengths } from '../../state/BenchContext.tsx';
import type { LaidOut } from './useLayout.ts';

/** Height of the lettering and highest picture, px. */
const LETTERING = 11;
const HIGHEST = 560;

interface LayoutDrawingProps {
  readonly laid: LaidOut;
  readonly describe: string;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The leather with the pieces laid on it, to scale: defects hatched, an arrow on each piece from its tail to its head. */
export function LayoutDrawing({ laid: { layout, question }, describe }: LayoutDrawingProps) {
  const lengths = useLengths();
  const [ref, room] = useWidth<HTMLDivElement>();
  const { hide } = question;
  const box = boxOf(hide.outline);
  // Lettering keeps its size on the screen, whatever the scale of the leather.
  const scale = Math.min(Math.max(120, room - 4 * LETTERING) / box.width, HIGHEST / box.height);
  const text = LETTERING / scale;
  const pad = 3 * text;
  const bar = scaleBar(box.width, lengths.units);
  const place = ([x, y]: Vec2): Vec2 => [x - box.x, box.y + box.height - y];
  const corners = (polygon: readonly Vec2[]): string => polygon.map((corner) => place(corner).join(',')).join(' ');
  return (
    <div ref={ref}>
      <svg
        className="drawing layout-drawing"
        viewBox={`${-pad} ${-text} ${box.width + pad + text} ${box.height + text + pad}`}
        style={{ maxInlineSize: (box.width + pad + text) * scale }}
        role="img"
        aria-label={describe}
        fontSize={text}
      >
        <polygon className="hide" points={corners(hide.outline)} />
        {hide.defects.map((defect) => (
          <polygon key={corners(defect)} className="defect" points={corners(defect)} />
        ))}
        {layout.placed.map((piece) => (
          <Piece
            key={corners(piece.polygon)}
            piece={piece}
            corners={corners(piece.polygon)}
            box={boxOf(piece.polygon.map(place))}
            angle={hide.backbone + (piece.quarters * Math.PI) / 2}
            text={text}
          />
        ))}
        <Arrow middle={[-1.5 * text, box.height / 2]} length={box.height / 3} angle={hide.backbone} barb={text * 0.6} />
        <text transform={`translate(${-1.9 * text} ${box.height / 2}) rotate(-90)`}>backbone</text>
        <g transform={`translate(0 ${box.height + 0.8 * text})`}>
          <path d={`M0 ${-text / 3}V${text / 3}M${bar} ${-text / 3}V${text / 3}M0 0H${bar}`} />
          <text x={bar / 2} y={1.4 * text}>
            {lengths.size(bar)}
          </text>
        </g>
      </svg>
    </div>
  );
}

interface PieceProps {
  readonly piece: PlacedPiece;
  readonly corners: string;
  readonly box: Box;
  readonly angle: number;
  readonly text: number;
}

function Piece({ piece, corners, box, angle, text }: PieceProps) {
  // The arrow is over the name; a name wider than the piece runs along it.
  const at = (share: number): Vec2 => [box.x + box.width / 2, box.y + share * box.height];
  const isNarrow = box.width < 0.6 * text * piece.name.length && box.height > box.width;
  const [nameX, nameY] = at(0.68);
  return (
    <g>
      <polygon className="piece" points={corners} />
      <Arrow middle={at(0.32)} length={0.4 * Math.min(box.width, box.height)} angle={angle} barb={text * 0.6} />
      <text transform={`translate(${nameX} ${nameY}) ${isNarrow ? 'rotate(-90)' : ''} translate(0 ${0.35 * text})`}>
        {piece.name}
      </text>
    </g>
  );
}

interface ArrowProps {
  readonly middle: Vec2;
  readonly length: number;
  /** Counterclockwise from the x axis, as on the leather; the picture's y runs down. */
  readonly angle: number;
  readonly barb: number;
}

function Arrow({ middle, length, angle, barb }: ArrowProps) {
  const along = heading(-angle);
  const [from, to] = [addScaled(middle, along, -length / 2), addScaled(middle, along, length / 2)];
  const barbs = [-1, 1].map((side) => addScaled(to, heading(-angle + Math.PI + (side * Math.PI) / 6), barb));
  return (
    <path d={`M${from.join(' ')}L${to.join(' ')}${barbs.map((end) => `M${to.join(' ')}L${end.join(' ')}`).join('')}`} />
  );
}

function boxOf(polygon: readonly Vec2[]): Box {
  const [xs, ys] = [polygon.map(([x]) => x), polygon.map(([, y]) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}
