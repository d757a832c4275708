import type { CoverDesign, Edge, Printer } from '../../core/index.ts';
import { lagging } from '../state/lagging.tsx';
import { edgeRows, roomWords } from './edgeRows.ts';
import './loupe.css';

interface RoomLeftProps {
  readonly design: CoverDesign;
  readonly lengths: Printer;
  /** Looks at an edge. */
  readonly onEdge: (edge: Edge) => void;
}

/** The gap of every edge over the leather's range, to one scale; pressed, an edge is looked at. */
export const RoomLeft = lagging(
  ({ design, lengths }) => ({ design, lengths }),
  ({ design, lengths, onEdge }: RoomLeftProps) => {
    const rows = edgeRows(design);
    const bounds = rows.flatMap(({ least, most }) => [least, most]);
    const [low, high] = [Math.min(0, ...bounds), Math.max(0, ...bounds)];
    const share = (length: number): string => `${(100 * length) / Math.max(NOTHING, high - low)}%`;
    const place = (value: number): string => share(value - low);
    return (
      <section className="room-left" aria-labelledby="room-left">
        <h2 id="room-left">Room left</h2>
        <ul>
          {rows.map(({ edge, name, least, most }) => (
            <li key={edge}>
              <button type="button" onClick={() => onEdge(edge)}>
                <span>{name}</span>{' '}
                <svg aria-hidden="true">
                  {stretches(least, most).map(({ kind, from, to }) => (
                    <rect
                      key={kind}
                      className="room-bar"
                      data-kind={kind}
                      x={place(from)}
                      width={share(to - from)}
                      height="100%"
                    />
                  ))}
                  <line x1={place(0)} x2={place(0)} y2="100%" />
                </svg>{' '}
                <strong>{roomWords(least, most, lengths)}</strong>
              </button>
            </li>
          ))}
        </ul>
      </section>
    );
  },
);

/** Lengths below this are none, mm. */
const NOTHING = 1e-6;

/** The bar of an edge, mm: room or overrun at either end of the leather, and beyond it what is there at one end only. */
function stretches(least: number, most: number) {
  const all = [
    { kind: 'gap', from: 0, to: Math.max(0, least) },
    { kind: 'gapAtOneEnd', from: Math.max(0, least), to: Math.max(0, most) },
    { kind: 'overrun', from: Math.min(0, most), to: 0 },
    { kind: 'overrunAtOneEnd', from: Math.min(0, least), to: Math.min(0, most) },
  ] as const;
  return all.filter(({ from, to }) => to - from > NOTHING);
}
