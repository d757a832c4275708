import { memo, useMemo } from 'react';
import type { Layer, Picture, PieceDrawing } from '../../core/index.ts';
import { layerShapes } from './layerShapes.ts';

interface PieceShapesProps {
  readonly piece: PieceDrawing;
  readonly layers: readonly Layer[];
  readonly hasWords: boolean;
  /** Where a picture is found as the page shows it; without it pictures are left out. */
  readonly pictureAddress?: PictureAddress;
}

export type PictureAddress = (artwork: Picture['artwork']) => string | null;

/** One piece, a group for each of its layers. */
export const PieceShapes = memo(function PieceShapes({ piece, layers, hasWords, pictureAddress }: PieceShapesProps) {
  const shapes = useMemo(() => layerShapes(piece), [piece]);
  return shapes
    .filter(({ layer }) => layers.includes(layer))
    .map(({ layer, data, words, pictures }) => (
      <g key={layer} data-layer={layer}>
        {pictures.map(({ artwork, origin, along, down }) => (
          <image
            key={`${origin}`}
            href={pictureAddress?.(artwork) ?? undefined}
            width={1}
            height={1}
            preserveAspectRatio="none"
            transform={`matrix(${along[0]} ${-along[1]} ${down[0]} ${-down[1]} ${origin[0]} ${piece.height - origin[1]})`}
          />
        ))}
        {data !== '' && <path d={data} data-open={!data.endsWith('Z') || undefined} />}
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
