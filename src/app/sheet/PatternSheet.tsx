import { useMemo } from 'react';
import {
  arrangePieces,
  type Drawing,
  isTracing,
  LAYERS,
  type Layer,
  type PatternZone,
  type PieceDrawing,
} from '../../core/index.ts';
import { useLengths } from '../state/BenchContext.tsx';
import { Dimension, PieceWords } from './PieceMarks.tsx';
import { type PictureAddress, PieceShapes } from './PieceShapes.tsx';
import { useWidth } from './useExtent.ts';
import './sheet.css';

/** Height of the lettering, px, unless told otherwise. */
const LETTERING = 11;

/** The pattern's own words are this high at the least, mm; under so many px they could not be read. */
const WORDS = { height: 2.5, least: 6 };

interface PatternSheetProps {
  readonly drawing: Drawing;
  readonly layers?: readonly Layer[];
  /** A band across the outside to light up. */
  readonly lit?: PatternZone | null;
  /** Height of the lettering, px. */
  readonly lettering?: number;
  /** Height that the drawing has at most, px. */
  readonly highest?: number;
  readonly pictureAddress?: PictureAddress;
}

/** Every piece of a drawing to one scale, its layers drawn as everywhere else; small, names and widths stand for its words. */
export function PatternSheet({
  drawing,
  layers = LAYERS,
  lit = null,
  lettering = LETTERING,
  highest,
  pictureAddress,
}: PatternSheetProps) {
  const lengths = useLengths();
  const [ref, wide] = useWidth<HTMLDivElement>();
  // Not yet measured, it is laid out as for a narrow place.
  const aspect = highest === undefined || wide === 0 ? undefined : wide / highest;
  const shape = useMemo(() => arrangePieces(drawing, 0, aspect), [drawing, aspect]);
  const room = highest === undefined ? wide : Math.min(wide, (highest * shape.width) / shape.height);
  // Lettering keeps its size on the screen, whatever the scale of the pieces.
  const text = (lettering * shape.width) / Math.max(120, room - 4 * lettering);
  const [pad, gap] = [text * 2.4, text * 2.2];
  const { width, height, pieces } = useMemo(() => arrangePieces(drawing, gap, aspect), [drawing, gap, aspect]);
  const isReadable = (WORDS.height * lettering) / text >= WORDS.least;
  // Half of a cut size, and what the fold of the card takes, is no size of its own.
  const widthOf = (piece: PieceDrawing): string => (piece.id === 'half' ? lengths.exact : lengths.size)(piece.width);
  return (
    <div ref={ref}>
      <svg
        className="drawing flat-pattern"
        viewBox={`${-pad} ${-pad} ${width + pad + text} ${height + pad + 1.75 * text}`}
        role="img"
        aria-label={`Flat pattern to scale: ${drawing.pieces
          .map((piece) => `${piece.name.toLowerCase()} ${widthOf(piece)} by ${lengths.size(piece.height)}`)
          .join(', ')}`}
        fontSize={text}
        style={highest === undefined ? undefined : { maxInlineSize: room }}
      >
        {pieces.map(({ piece, copy, at: [x, y] }, i) => (
          <g key={`${piece.id} ${copy}`} transform={`translate(${x} ${height - y - piece.height})`}>
            {i === 0 && !isTracing(piece) && (
              <Sizes piece={piece} words={[widthOf(piece), lengths.size(piece.height)]} text={text} />
            )}
            <PieceShapes piece={piece} layers={layers} hasWords={isReadable} pictureAddress={pictureAddress} />
            {i === 0 && lit !== null && <rect className="lit" {...bandOf(lit, piece)} />}
            {!isReadable && (
              <PieceWords
                {...labelPlace(piece)}
                words={[piece.name.replace(' tracing', ''), widthOf(piece)]}
                text={text}
                isTaken={layers.includes('tooling') && piece.layers.tooling.length > 0}
              />
            )}
          </g>
        ))}
      </svg>
    </div>
  );
}

/** Where the piece's own label stands, clear of its lines, and most of the room up to the nearer edge. */
function labelPlace({ layers, width, height }: PieceDrawing) {
  const title = layers.text.find((entity) => entity.kind === 'text');
  const x = title?.block === undefined ? width / 2 : (title.block[0] + title.block[1]) / 2;
  return { middle: [x, height / 2], room: 1.5 * Math.min(x, width - x), width, height } as const;
}

/** A band of the outside, at least 1 mm broad so that it can be seen; head up and grain side up, so front at the right. */
function bandOf({ axis, from, to }: PatternZone, { width, height }: PieceDrawing) {
  const broad = Math.max(1, to - from);
  return axis === 'width' ? { x: width - from - broad, width: broad, height } : { y: from, width, height: broad };
}

interface SizesProps {
  readonly piece: PieceDrawing;
  /** Its width and height as they are printed. */
  readonly words: readonly [string, string];
  readonly text: number;
}

function Sizes({ piece: { width, height }, words: [across, upright], text }: SizesProps) {
  return (
    <>
      <Dimension from={0} to={width} at={-text * 0.6} text={across} size={text} />
      <g transform={`translate(${-text * 0.6} ${height}) rotate(-90)`}>
        <Dimension from={0} to={height} at={0} text={upright} size={text} />
      </g>
    </>
  );
}
