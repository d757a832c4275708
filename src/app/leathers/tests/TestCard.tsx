import { useRef, useState } from 'react';
import { type LeatherTests, MOST_READINGS, type ReadingList, TEST_STRIPS } from '../../../core/index.ts';
import type { TestCardSpec } from './cards.ts';
import { Findings } from './Findings.tsx';
import { ReadingForm } from './ReadingForm.tsx';
import { Readings } from './Readings.tsx';
import { type AnyReading, READING_KINDS } from './readingKinds.ts';
import { TestPicture } from './TestPicture.tsx';

interface TestCardProps {
  readonly card: TestCardSpec;
  readonly tests: LeatherTests;
  readonly change: (next: LeatherTests) => void;
}

/** A reading that is being changed. */
interface Edited {
  readonly list: ReadingList;
  readonly place: number;
}

/** One test: its picture, what was found, how it is done, and its readings. */
export function TestCard({ card, tests, change }: TestCardProps) {
  const { test, title, purpose, lists, steps, cautions } = card;
  const [edited, setEdited] = useState<Edited | null>(null);
  const summary = useRef<HTMLElement>(null);
  const id = `test-${test}`;
  const letters = TEST_STRIPS.filter((strip) => strip.test === test).map(({ letter }) => letter);
  const count = lists.reduce((sum, list) => sum + tests[list].length, 0);

  const put = (list: ReadingList, readings: readonly AnyReading[]): void => change({ ...tests, [list]: readings });
  const keep = (list: ReadingList, reading: AnyReading): void => {
    const readings: readonly AnyReading[] = tests[list];
    put(list, edited?.list === list ? readings.with(edited.place, reading) : [...readings, reading]);
    setEdited(null);
  };

  return (
    <article className="test-card" aria-labelledby={id}>
      <TestPicture test={test} />
      <h4 id={id}>{title}</h4>
      <p className="help">
        {purpose} Strips {letters.join(' and ')}.
      </p>
      <Findings lists={lists} tests={tests} />
      <details>
        <summary>How it is done</summary>
        <ol>
          {steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
        <p className="help">{cautions.join(' ')}</p>
      </details>
      <details open={edited !== null || undefined}>
        <summary ref={summary}>{count === 0 ? 'Enter what you read' : `Readings: ${count}`}</summary>
        {lists.map((list) => (
          <div key={list} className="test-readings">
            {lists.length > 1 && <h5>{READING_KINDS[list].title}</h5>}
            <Readings
              list={list}
              tests={tests}
              edit={(place) => setEdited({ list, place })}
              remove={(place) => {
                const readings: readonly AnyReading[] = tests[list];
                put(list, readings.toSpliced(place, 1));
                setEdited(null);
                // The button that was pressed may be gone.
                summary.current?.focus();
              }}
            />
            <ReadingForm
              key={edited?.list === list ? edited.place : 'new'}
              list={list}
              former={tests[list].at(-1)}
              edited={edited?.list === list ? tests[list][edited.place] : undefined}
              isFull={tests[list].length >= MOST_READINGS}
              keep={(reading) => keep(list, reading)}
              cancel={() => setEdited(null)}
            />
          </div>
        ))}
      </details>
    </article>
  );
}
