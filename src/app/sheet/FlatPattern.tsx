import { useBench } from '../state/BenchContext.tsx';
import { stripSegments } from '../strip/segments.ts';
import { useWidth } from '../strip/useWidth.ts';
import { Dimension, PieceWords, PocketSeam } from './PieceMarks.tsx';
import { placeSmallPieces } from './smallPieces.ts';

/** Height of the lettering, px. */
const LETTERING = 11;

interface FlatPatternProps {
  readonly highlight: string | null;
}

/** The cut pieces laid flat, to one scale: seam line, fold zone, centre line, sizes. */
export function FlatPattern({ highlight }: FlatPatternProps) {
  const { design, lengths } = useBench();
  const { outside } = design.pieces;
  const { seam, pockets } = design.job;
  const isTurned = pockets.construction === 'turned';
  const segments = stripSegments(design, 'thick');
  const [ref, width] = useWidth<HTMLDivElement>();
  // Lettering keeps its size on the screen, whatever the scale of the pieces.
  const text = (LETTERING * outside.width) / Math.max(120, width - 4 * LETTERING);
  const pad = text * 2.4;
  const space = text * 2.2;
  const placed = placeSmallPieces(design.pieces, space);
  const rows = (placed.at(-1)?.row ?? -1) + 1;
  const rowHeight = outside.height + space;
  const height = outside.height + rows * rowHeight;
  const margin = seam.edgeMargin_mm;
  const corner = seam.cornerRadius_mm;
  const lit = segments.find(({ id }) => id === highlight);
  const folds = segments.filter(({ kind }) => kind === 'fold' || kind === 'spine');
  const [foldFrom, foldTo] = [folds[0]?.from ?? 0, folds.at(-1)?.to ?? 0];
  const seamBox = (width: number): { x: number; y: number; width: number; height: number; rx: number } => ({
    x: isTurned ? 0 : margin,
    y: margin,
    width: width - (isTurned ? 0 : 2 * margin),
    height: outside.height - 2 * margin,
    rx: Math.max(0, corner - margin),
  });

  return (
    <section aria-labelledby="flat-pattern">
      <h2 id="flat-pattern">Flat pattern</h2>
      <div ref={ref}>
        <svg
          className="flat-pattern"
          viewBox={`${-pad} ${-pad} ${outside.width + pad + text} ${height + pad + text}`}
          role="img"
          aria-label={`Flat pattern to scale: outside ${lengths.cut(outside.width)} by ${lengths.cut(outside.height)}`}
          fontSize={text}
        >
          <Dimension from={0} to={outside.width} at={-text * 0.6} text={lengths.cut(outside.width)} size={text} />
          <g transform={`translate(${-text * 0.6} ${outside.height}) rotate(-90)`}>
            <Dimension from={0} to={outside.height} at={0} text={lengths.cut(outside.height)} size={text} />
          </g>
          <rect className="leather" width={outside.width} height={outside.height} rx={corner} />
          <rect className="fold-zone" x={foldFrom} width={foldTo - foldFrom} height={outside.height} />
          {lit && (
            <rect
              className="lit"
              x={Math.min(lit.from, lit.to)}
              width={Math.max(1, Math.abs(lit.length))}
              height={outside.height}
            />
          )}
          <rect className="seam-line" {...seamBox(outside.width)} />
          {isTurned &&
            [design.pieces.pocketDepth, outside.width - design.pieces.pocketDepth].map((x) => (
              <path key={x} className="turn-line" d={`M${x} 0V${outside.height}`} />
            ))}
          <path
            className="centre-line"
            d={`M${(foldFrom + foldTo) / 2} ${-text * 0.4}V${outside.height + text * 0.4}`}
          />
          <text className="piece-name" x={outside.width / 4} y={outside.height / 2}>
            outside
          </text>
          {placed.map(({ piece, x, row }) => (
            <g key={piece.name} transform={`translate(${x} ${outside.height + space + row * rowHeight})`}>
              <rect
                className="leather"
                width={piece.width}
                height={piece.height}
                rx={piece.kind === 'lining' ? 0 : corner}
              />
              {piece.kind !== 'lining' && (
                <PocketSeam
                  margin={margin}
                  width={piece.width}
                  height={piece.height}
                  isBack={piece.kind === 'backPocket'}
                />
              )}
              <PieceWords piece={piece} words={[piece.name, `${lengths.cut(piece.width)} wide`]} text={text} />
            </g>
          ))}
        </svg>
      </div>
      <p className="help">
        Grain side down, head at the top. Dashed: seam line. Ruled: fold zone. Chain line: middle of the spine.
      </p>
    </section>
  );
}
