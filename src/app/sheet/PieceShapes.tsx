import { memo, useMemo } from 'react';
import type { Layer, PieceDrawing } from '../../core/index.ts';
import { layerShapes } from './layerShapes.ts';

interface PieceShapesProps {
  readonly piece: PieceDrawing;
  readonly layers: readonly Layer[];
  readonly hasWords: boolean;
}

/** One piece, a group for each of its layers. */
export const PieceShapes = memo(function PieceShapes({ piece, layers, hasWords }: PieceShapesProps) {
  const shapes = useMemo(() => layerShapes(piece), [piece]);
  return shapes
    .filter(({ layer }) => layers.includes(layer))
    .map(({ layer, data, words }) => (
      <g key={layer} data-layer={layer}>
        {data !== '' && <path d={data} />}
        {hasWords &&
          words
            .filter(({ names }) => names === undefined || layers.includes(names))
            .map(({ at: [x, y], height, rotation, align, text }) => (
              <text
                key={`${x} ${y}`}
                transform={`translate(${x} ${piece.height - y}) rotate(${(-rotation * 180) / Math.PI})`}
                fontSize={height}
                style={{ textAnchor: align }}
              >
                {text}
              </text>
            ))}
      </g>
    ));
});
