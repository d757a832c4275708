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
  /** Of the piece, mm. */
  readonly width: number;
  readonly height: number;
  readonly words: readonly [name: string, size: string];
  /** Height of the lettering, mm. */
  readonly text: number;
  /** Whether its middle is taken, as by tooling: then the name alone stands below it. */
  readonly isTaken: boolean;
}

/**
 * Name and size of a piece; turned along it where there is little room, there without the size where that would reach its
 * arrow, and the name alone below where there is none.
 */
export function PieceWords({
  middle: [x, y],
  room,
  width,
  height,
  words: [name, size],
  text,
  isTaken,
}: PieceWordsProps) {
  const long = 0.65 * text * Math.max(name.length, size.length);
  const isLow = height < 2.6 * text;
  if (isTaken || (height < long && (isLow || room < long)))
    return (
      <text className="piece-name" x={isTaken ? width / 2 : x} y={height + 1.25 * text}>
        {name}
      </text>
    );
  const isTurned = room < long;
  return (
    <g transform={`translate(${x} ${y}) ${isTurned ? 'rotate(-90)' : ''}`}>
      <text className="piece-name">{name}</text>
      {(!isTurned || room > 2.4 * text) && (
        <text className="piece-note" y={text * 1.3}>
          {size}
        </text>
      )}
    </g>
  );
}
