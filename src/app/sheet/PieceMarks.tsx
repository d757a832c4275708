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
  readonly middle: readonly [x: number, y: number];
  /** Width that the words may take, mm. */
  readonly room: number;
  readonly words: readonly [name: string, size: string];
  /** Height of the lettering, mm. */
  readonly text: number;
}

/** Name and size of a piece, turned along it where there is little room. */
export function PieceWords({ middle: [x, y], room, words: [name, size], text }: PieceWordsProps) {
  const turn = room < 0.65 * text * Math.max(name.length, size.length) ? 'rotate(-90)' : '';
  return (
    <g transform={`translate(${x} ${y}) ${turn}`}>
      <text className="piece-name">{name}</text>
      <text className="piece-note" y={text * 1.3}>
        {size}
      </text>
    </g>
  );
}
