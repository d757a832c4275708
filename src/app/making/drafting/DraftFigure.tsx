import { DRAFTED, type Draft } from '../../../output/draftingSheet/draftingSheet.ts';
import { PieceShapes } from '../../sheet/PieceShapes.tsx';

/** A piece with the letters of its corners beside it. */
export function DraftFigure({ draft: { piece, points, title } }: { readonly draft: Draft }) {
  const { width, height } = piece;
  // Lettering keeps its size however large the piece is.
  const text = Math.max(width / 32, height / 18);
  const pad = 1.6 * text;
  return (
    <svg
      className="drawing flat-pattern draft-figure"
      viewBox={`${-pad} ${-pad} ${width + 2 * pad} ${height + 2 * pad}`}
      role="img"
      aria-label={`${title}: a rectangle, A lower left, B lower right, C upper right, D upper left`}
      fontSize={text}
    >
      <PieceShapes piece={piece} layers={DRAFTED} hasWords={false} />
      {points.map(({ name, at: [x, y] }) => (
        <text
          key={name}
          className="piece-name"
          x={x === 0 ? -0.8 * text : width + 0.8 * text}
          y={y === 0 ? height + 1.1 * text : -0.4 * text}
          textAnchor="middle"
        >
          {name}
        </text>
      ))}
    </svg>
  );
}
