import { type Artwork, designName, type ToolingDesign } from '../../../core/index.ts';
import { DesignFields } from './DesignFields.tsx';
import { useToolingEdits } from './useTooling.ts';

/** A design with its place in the job's list, and what is to be said of it. */
interface ListedDesign {
  readonly index: number;
  readonly design: ToolingDesign;
  /** What is missing of it, and what it comes too near to, in sentences. */
  readonly notes: readonly string[];
}

interface DesignListProps {
  readonly designs: readonly ListedDesign[];
  readonly artworks: readonly Artwork[];
  readonly chosen: number | null;
  readonly choose: (index: number) => void;
}

/** The designs on one face in the order in which they are worked, each with its notes; the one in hand with its fields. */
export function DesignList({ designs, artworks, chosen, choose }: DesignListProps) {
  const { change, shift } = useToolingEdits();
  return (
    <ol className="design-list">
      {designs.map(({ index, design, notes }, place) => {
        const name = designName(design, artworks);
        const [before, after] = [designs[place - 1], designs[place + 1]];
        return (
          <li key={index}>
            <button type="button" aria-expanded={index === chosen} onClick={() => choose(index)}>
              {name}
            </button>
            {notes.map((note) => (
              <p key={note} className="design-warning">
                {note}
              </p>
            ))}
            {index === chosen && (
              <div className="listed">
                <DesignFields
                  index={index}
                  design={design}
                  artwork={design.kind === 'drawing' ? artworks.find(({ id }) => id === design.artwork) : undefined}
                />
                <p className="design-acts">
                  <button type="button" className="quiet" onClick={() => change(index, null)}>
                    Take out<span className="only-heard"> {name}</span>
                  </button>
                  {before !== undefined && (
                    <button
                      type="button"
                      className="quiet"
                      onClick={() => {
                        shift(index, before.index);
                        choose(before.index);
                      }}
                    >
                      Work it earlier
                    </button>
                  )}
                  {after !== undefined && (
                    <button
                      type="button"
                      className="quiet"
                      onClick={() => {
                        shift(index, after.index);
                        choose(after.index);
                      }}
                    >
                      Work it later
                    </button>
                  )}
                </p>
              </div>
            )}
          </li>
        );
      })}
    </ol>
  );
}
