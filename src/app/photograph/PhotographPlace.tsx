import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand/react';
import { MARKED_PAPERS, type MarkedPaper, PLAIN_PAPERS, type PlainPaper } from '../../core/index.ts';
import { usualPages } from '../../output/photographSheet/sheetPages.ts';
import { barLength } from '../../output/photographSheet/sheetWords.ts';
import { Choice } from '../fields/Choice.tsx';
import { optionsOf } from '../fields/optionsOf.ts';
import { PlainField } from '../fields/PlainField.tsx';
import { padKeys } from '../fields/pad.ts';
import { useBench, useLengths } from '../state/BenchContext.tsx';
import { PhotographSheetButton } from '../take/PhotographSheetButton.tsx';
import { FaceStep } from './FaceStep.tsx';
import { MeasuresStep, useHasShots } from './MeasuresStep.tsx';
import { addPhotographs, choosePaper, photographs, type TypedEntry, typeEntry } from './photographs.ts';
import { FACE_WORDS, SHOT_WORDS } from './photographWords.ts';
import { type Readings, readingsOf } from './readings.ts';
import { ShotsStep } from './ShotsStep.tsx';
import { useMeasuredBook } from './useMeasuredBook.ts';
import './photograph.css';

/** The book measured by photographs of it on a printed sheet, step by step on one page. */
export default function PhotographPlace() {
  const { units, book } = useBench(({ lengths, history }) => ({ units: lengths.units, book: history.good.job.book }));
  const state = useStore(photographs);
  const { shots, paper, typed } = state;
  const readings = useMemo(() => readingsOf({ shots, paper, typed }, units), [shots, paper, typed, units]);
  const measured = useMeasuredBook(readings, book.height_mm);
  const { thickness } = readings;
  const high = measured.found?.measures.find(({ path }) => path === 'book.height_mm');
  const hasStanding = useHasShots('standing');
  useEffect(() => {
    const paste = (event: ClipboardEvent): void => {
      const files = [...(event.clipboardData?.files ?? [])];
      if (files.length === 0) return;
      event.preventDefault();
      addPhotographs(files, 'lying');
    };
    window.addEventListener('paste', paste);
    return () => window.removeEventListener('paste', paste);
  }, []);
  return (
    <div className="photograph-place">
      <header>
        <h2>Measure by photograph</h2>
        <p>
          Three photographs of the closed book on a marked sheet measure it as well as a ruler. They stay on this
          machine, and are forgotten when the page is closed.
        </p>
      </header>
      <Step number={1} title="The marked sheet">
        <SheetStep />
      </Step>
      <Step number={2} title={SHOT_WORDS.lying.title}>
        <ShotsStep position="lying" />
      </Step>
      <Step number={3} title={paper === null ? 'The print, checked' : 'The paper, measured'}>
        <PrintStep readings={readings} />
      </Step>
      <Step number={4} title={FACE_WORDS.lying.title}>
        <ThicknessFields readings={readings} />
        <FaceStep position="lying" readings={readings} height={thickness} />
      </Step>
      <Step number={5} title={SHOT_WORDS.standing.title} also="if you can">
        <ShotsStep position="standing" />
        {hasStanding && (
          <>
            <h4>{FACE_WORDS.standing.title}</h4>
            <FaceStep position="standing" readings={readings} height={high?.value ?? null} />
          </>
        )}
      </Step>
      <Step number={6} title="The measures">
        <MeasuresStep measured={measured} readings={readings} />
      </Step>
    </div>
  );
}

interface StepProps {
  readonly number: number;
  readonly title: string;
  readonly also?: string;
  readonly children: ReactNode;
}

const Step = ({ number, title, also, children }: StepProps) => (
  <section className="photograph-step" aria-labelledby={`photograph-step-${number}`}>
    <h3 id={`photograph-step-${number}`}>
      <span className="step-number">{number}</span> {title}
      {also !== undefined && `, ${also}`}
    </h3>
    {children}
  </section>
);

const PAPERS = optionsOf(Object.keys(MARKED_PAPERS) as MarkedPaper[]);
const SHEETS = [
  { value: '', label: 'the marked sheet, printed' },
  ...(Object.keys(PLAIN_PAPERS) as PlainPaper[]).map((name) => ({ value: name, label: `a plain sheet of ${name}` })),
];

/** Which sheet the book lies on, and the one to print. */
function SheetStep() {
  const { units, book } = useBench(({ lengths, history }) => ({ units: lengths.units, book: history.good.job.book }));
  const plain = useStore(photographs, (state) => state.paper);
  const [chosen, setPaper] = useState<MarkedPaper | null>(null);
  const [count, setCount] = useState<number | null>(null);
  const paper = chosen ?? (units === 'in' ? 'Letter' : 'A4');
  const most = MARKED_PAPERS[paper].pages;
  const pages = Math.min(most, count ?? usualPages(book, paper));
  return (
    <>
      <div className="photograph-fields">
        <label className="field tall">
          The book lies on
          <select
            value={plain ?? ''}
            onChange={({ target: { value } }) => choosePaper(value === '' ? null : (value as PlainPaper))}
          >
            {SHEETS.map(({ value, label }) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </select>
        </label>
      </div>
      {plain === null ? (
        <>
          <p>Print it for yourself, or send it to the customer: what to do stands on it in plain words.</p>
          <div className="sheet-choices">
            <Choice title="Paper" options={PAPERS} chosen={paper} choose={(value) => setPaper(value as MarkedPaper)} />
            <Choice
              title="Pages"
              options={optionsOf(Array.from({ length: most }, (_, i) => String(i + 1)))}
              chosen={String(pages)}
              choose={(value) => setCount(Number(value))}
            />
          </div>
          <div className="row">
            <PhotographSheetButton paper={paper} pages={pages} />
          </div>
        </>
      ) : (
        <p>
          One plain white sheet on a darker ground, whole and flat, the book in its middle. All four corners show in
          each photograph, the same edge of the sheet up. This measures less well than the marked sheet.
        </p>
      )}
    </>
  );
}

/** What a ruler says of the sheet. */
function PrintStep({ readings }: { readonly readings: Readings }) {
  const paper = useStore(photographs, (state) => state.paper);
  const { units } = useLengths();
  const { meant } = readings;
  const say = (length: number): string => barLength({ length }, units);
  return (
    <>
      <p>
        {paper === null
          ? 'A print is seldom exactly as large as meant. What your ruler shows along the two bars of the first page:'
          : 'What your ruler shows along the sides of the paper:'}
      </p>
      <div className="photograph-fields">
        <Reading
          entry="across"
          title={paper === null ? 'Lower bar' : 'Width of the paper'}
          help={`Meant to be ${say(meant.across)}.`}
          readings={readings}
        />
        <Reading
          entry="along"
          title={paper === null ? 'Upright bar' : 'Height of the paper'}
          help={`Meant to be ${say(meant.along)}.`}
          readings={readings}
        />
        <RulerField />
      </div>
    </>
  );
}

function RulerField() {
  const text = useStore(photographs, (state) => state.typed.ruler);
  return (
    <PlainField
      title="Read with"
      help="The ruler’s name. Lengths by one ruler share the error of its scale; leave empty for the one you measure books with."
      placeholder="ruler A"
      text={text}
      change={(typed) => typeEntry('ruler', typed)}
    />
  );
}

function ThicknessFields({ readings }: { readonly readings: Readings }) {
  const isParallel = useStore(photographs, (state) => state.isParallel);
  return (
    <>
      <div className="photograph-fields">
        <Reading
          entry="thickness"
          title="Thickness of the closed book"
          help="Left empty, two photographs or more from different sides tell it. Typed, it makes the rest surer."
          placeholder="to be found"
          readings={readings}
        />
      </div>
      <label className="tick">
        <input
          type="checkbox"
          checked={isParallel}
          onChange={(event) => photographs.setState({ isParallel: event.target.checked })}
        />
        <span>As thick at the fore-edge as at the spine</span>
      </label>
    </>
  );
}

interface ReadingProps {
  readonly entry: TypedEntry;
  readonly title: string;
  readonly help: string;
  readonly placeholder?: string;
  readonly readings: Readings;
}

function Reading({ entry, title, help, placeholder, readings }: ReadingProps) {
  const text = useStore(photographs, (state) => state.typed[entry]);
  const { units } = useLengths();
  const issue = readings.issues[entry];
  return (
    <PlainField
      title={title}
      help={help}
      text={text}
      change={(typed) => typeEntry(entry, typed)}
      issues={issue === undefined ? [] : [issue]}
      placeholder={placeholder ?? (units === 'in' ? 'in inches' : 'in mm')}
      keys={padKeys('book.width_mm', units)}
    />
  );
}
