import { type CardLesson, type Explained, likelihood } from '../../../core/index.ts';
import { useLengths } from '../../state/BenchContext.tsx';

interface ExplanationsProps {
  readonly lesson: CardLesson;
  readonly isStale: boolean;
  /** Corrects the measures by one explanation. */
  readonly take: (explained: Explained) => void;
}

/** Chance below which an explanation is not listed. */
const LISTED_FROM = 0.01;

/** What may be behind the readings: how likely each explanation is, the outside by it, and a button that takes it. */
export function Explanations({ lesson: { explanations }, isStale, take }: ExplanationsProps) {
  const lengths = useLengths();
  return (
    <>
      <table className="explanations">
        <caption>What may be behind it</caption>
        <thead>
          <tr>
            <th scope="col">Explanation</th>
            <th scope="col">how likely</th>
            <th scope="col">outside in leather</th>
          </tr>
        </thead>
        <tbody>
          {explanations
            .filter(({ chance }) => chance >= LISTED_FROM)
            .map((explained) => (
              <tr key={explained.id} data-explanation={explained.id}>
                <th scope="row">{explained.words}</th>
                <td>
                  <span>{likelihood(explained.chance, lengths)}</span>
                </td>
                <td>
                  <span>{lengths.size(explained.cut.width)}</span> × <span>{lengths.size(explained.cut.height)}</span>{' '}
                  {explained.change.length > 0 && (
                    <button
                      type="button"
                      disabled={isStale}
                      aria-label={`Correct the measures by this: ${explained.words}`}
                      onClick={() => take(explained)}
                    >
                      Take this
                    </button>
                  )}
                </td>
              </tr>
            ))}
        </tbody>
      </table>
      <p className="help">
        The chances hold if errors and slips are as common as assumed. Of 100 card trials about 70 have all measures
        right. Taking one corrects the measures by it; one undo brings all back.
      </p>
    </>
  );
}
