interface DimensionProps {
  readonly from: number;
  readonly to: number;
  readonly at: number;
  readonly text: string;
  readonly size: number;
}

/** A dimension line along x, with its length over it. */
export function Dimension({ from, to, at, text, size }: DimensionProps) {
  return (
    <g className="piece-dimension">
      <path
        d={`M${from} ${at - size / 3}V${at + size / 3}M${to} ${at - size / 3}V${at + size / 3}M${from} ${at}H${to}`}
      />
      <text x={(from + to) / 2} y={at - size * 0.35}>
        {text}
      </text>
    </g>
  );
}

interface PieceWordsProps {
  readonly piece: { readonly width: number; readonly height: number };
  readonly words: readonly [name: string, size: string];
  /** Height of the lettering, mm. */
  readonly text: number;
}

/** Name and size in the middle of a piece, turned along it where it is narrow. */
export function PieceWords({ piece: { width, height }, words: [name, size], text }: PieceWordsProps) {
  const turn = width < 0.65 * text * Math.max(name.length, size.length) ? 'rotate(-90)' : '';
  return (
    <g transform={`translate(${width / 2} ${height / 2}) ${turn}`}>
      <text className="piece-name">{name}</text>
      <text className="piece-note" y={text * 1.3}>
        {size}
      </text>
    </g>
  );
}

/** The pocket is sewn on three sides; its mouth stays free. */
export function PocketSeam(props: {
  readonly margin: number;
  readonly width: number;
  readonly height: number;
  readonly isBack: boolean;
}) {
  const { margin, width, height, isBack } = props;
  const [mouth, edge] = isBack ? [0, width - margin] : [width, margin];
  return <path className="seam-line" d={`M${mouth} ${margin}H${edge}V${height - margin}H${mouth}`} />;
}
