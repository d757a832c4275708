import { droopTest, type LeatherTests, leatherTestResults, type ReadingList } from '../../../core/index.ts';
import { dayWords } from '../../../output/dayWords.ts';
import { useLengths } from '../../state/BenchContext.tsx';
import { SAID } from './readingKinds.ts';
import { WAY_WORDS } from './stripWords.ts';

interface ReadingsProps {
  readonly list: ReadingList;
  readonly tests: LeatherTests;
  readonly edit: (place: number) => void;
  readonly remove: (place: number) => void;
}

/** The readings of one list, each with what can be done about it, and those that are to be read again. */
export function Readings({ list, tests, edit, remove }: ReadingsProps) {
  const lengths = useLengths();
  const again = readAgain(list, tests);
  const said = SAID[list] as (reading: LeatherTests[ReadingList][number], print: typeof lengths) => string;
  if (tests[list].length === 0) return null;
  return (
    <ol className="readings">
      {tests[list].map((reading, place) => {
        const { way, worked, day } = reading;
        const isInside = 'grain' in reading && reading.grain === 'in';
        const refusal = 'droop_mm' in reading ? reasonOf(reading) : null;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other name
          <li key={place}>
            {said(reading, lengths)}
            <span className="help">
              {' '}
              {WAY_WORDS[way]}, worked {worked}
              {isInside && ', grain inside'}
              {day !== null && `, ${dayWords(day)}`}
            </span>
            {refusal !== null && <span className="issue"> {refusal}</span>}
            {again.has(place) && <span className="issue"> Contradicts the others: read it again.</span>}
            <div className="row reading-acts">
              <button type="button" className="quiet" onClick={() => edit(place)}>
                Change<span className="only-heard"> reading {place + 1}</span>
              </button>
              <button type="button" className="quiet" onClick={() => remove(place)}>
                Remove<span className="only-heard"> reading {place + 1}</span>
              </button>
            </div>
          </li>
        );
      })}
    </ol>
  );
}

function reasonOf(reading: LeatherTests['droops'][number]): string | null {
  const answer = droopTest(reading);
  return 'reason' in answer ? answer.reason : null;
}

/** The places of the readings that contradict others like them. */
function readAgain(list: ReadingList, tests: LeatherTests): ReadonlySet<number> {
  const states = new Set(tests[list].map(({ worked }) => worked));
  return new Set(
    [...states].flatMap((worked) => {
      const all = leatherTestResults(tests, { worked });
      const found = {
        folds: [all.bendRatio, all.grainIn.bendRatio],
        bends: [all.neutral, all.grainIn.neutral],
        droops: [all.modulus_MPa, all.grainIn.modulus_MPa],
        changes: [all.change],
        creases: [all.creaseSet, all.grainIn.creaseSet],
      }[list];
      return found.flatMap(({ along, across }) => [...(along?.again ?? []), ...(across?.again ?? [])]);
    }),
  );
}
