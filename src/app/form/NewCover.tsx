import { useEffect, useLayoutEffect, useRef, useState } from 'react';
import { EXAMPLE_JOBS, printer } from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { PlainField } from '../fields/PlainField.tsx';
import { padKeys } from '../fields/pad.ts';
import { useBench, useDispatch } from '../state/BenchContext.tsx';
import type { Written } from '../state/jobHistory.ts';
import { useTelephone } from '../state/useNarrow.ts';
import { BOOK_KINDS, SPINES } from './BookFields.tsx';
import { LeatherPicture } from './LeatherPicture.tsx';
import { MeasurePicture, Measures } from './MeasurePicture.tsx';
import { MeasuringSheetButton } from './MeasuringSheetButton.tsx';
import {
  type Answers,
  type Entry,
  echoOf,
  emptyWords,
  entriesFor,
  entryHelp,
  picturedBook,
  refusalsOf,
  usualOf,
  writtenJob,
} from './newCoverAnswers.ts';
import './form.css';

interface AskingProps {
  readonly answers: Answers;
  readonly setAnswers: (change: Partial<Answers>) => void;
  readonly open: (job: Written) => void;
  readonly close: () => void;
}

type Refusals = ReturnType<typeof refusalsOf>;

/** Takes answers, and takes back what was said of the entries that change. */
const forgiving =
  (setAnswers: AskingProps['setAnswers'], setRefusals: (next: (refusals: Refusals) => Refusals) => void) =>
  (change: Partial<Answers>, path?: Entry['path']): void => {
    setAnswers(change);
    if (path !== undefined) setRefusals(({ [path]: _, ...others }) => others);
  };

/** Asks for the figures that a new cover needs: on a telephone one question a screen, elsewhere all at once. */
export default function NewCover({ onClose }: { readonly onClose: () => void }) {
  const dispatch = useDispatch();
  const dialog = useRef<HTMLDialogElement>(null);
  const isTelephone = useTelephone();
  const units = useBench(({ view }) => view.units);
  const [given, setGiven] = useState<Omit<Answers, 'units'>>({ kind: 'hardback', spine: 'flat', texts: {} });
  useEffect(() => {
    if (dialog.current?.open === false) dialog.current.showModal();
  }, []);
  const Asking = isTelephone ? OneByOne : AllAtOnce;
  return (
    <dialog ref={dialog} className="new-cover" aria-labelledby="new-cover-title" onClose={onClose}>
      <Asking
        answers={{ ...given, units }}
        setAnswers={(change) => setGiven({ ...given, ...change })}
        open={(job) => {
          dispatch({ type: 'open', ...job });
          onClose();
        }}
        close={onClose}
      />
    </dialog>
  );
}

function AllAtOnce({ answers, setAnswers, open, close }: AskingProps) {
  const [refusals, setRefusals] = useState<Refusals>({});
  const start = (): void => {
    const refused = refusalsOf(answers);
    setRefusals(refused);
    if (Object.keys(refused).length === 0) open(writtenJob(answers));
  };
  const answer = forgiving(setAnswers, setRefusals);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        start();
      }}
    >
      <h2 id="new-cover-title">New cover</h2>
      <p>Measure the book closed. Everything else starts at its usual value and can be changed afterwards.</p>
      <BookAnswers answers={answers} setAnswers={setAnswers} />
      <Measures title="Measures" book={picturedBook(answers)}>
        {entriesFor(answers).map((entry) => (
          <EntryField
            key={entry.path}
            title={entry.title}
            {...{ entry, answers, setAnswers: answer }}
            refused={refusals[entry.path]}
          />
        ))}
      </Measures>
      <p className="row dialog-buttons">
        <button type="submit" className="main">
          Start this cover
        </button>
        <button type="button" onClick={close}>
          Cancel
        </button>
      </p>
      <OtherStarts open={open} />
    </form>
  );
}

function OneByOne({ answers, setAnswers, open, close }: AskingProps) {
  const lengths = printer(answers.units);
  const form = useRef<HTMLFormElement>(null);
  const [step, setStep] = useState(0);
  const [refusals, setRefusals] = useState<Refusals>({});
  const entries = entriesFor(answers);
  /** Undefined on the first screen, which asks for binding and spine. */
  const entry = entries[step - 1];
  const isLast = step === entries.length;
  const usual = entry === undefined ? null : usualOf(entry, answers);
  // Within the press that leads here, so that the keyboard of the telephone stays or opens.
  useLayoutEffect(() => {
    if (step > 0) form.current?.querySelector<HTMLInputElement>('input[type="text"]')?.focus();
  }, [step]);

  const goOn = (given: Answers): void => {
    const refused = refusalsOf(given);
    setRefusals(refused);
    if (entry !== undefined && refused[entry.path] !== undefined) return;
    if (!isLast) {
      setRefusals({});
      setStep(step + 1);
      return;
    }
    const wrong = entries.findIndex(({ path }) => refused[path] !== undefined);
    if (wrong === -1) open(writtenJob(given));
    else setStep(wrong + 1);
  };
  const answer = forgiving(setAnswers, setRefusals);
  const skip = (skipped: Entry): void => {
    const given = { ...answers, texts: { ...answers.texts, [skipped.path]: '' } };
    setAnswers(given);
    goOn(given);
  };

  return (
    <form
      ref={form}
      className="one-by-one"
      onSubmit={(event) => {
        event.preventDefault();
        goOn(answers);
      }}
    >
      <header className="row">
        <h2 id="new-cover-title">New cover</h2>
        <span className="bar-word" aria-live="polite">
          {step + 1} of {entries.length + 1}
        </span>
        <button type="button" onClick={close}>
          Cancel
        </button>
        <progress aria-label="Questions answered" value={step} max={entries.length + 1} />
      </header>
      {entry?.path === 'leather.outside' ? (
        <LeatherPicture text={answers.texts[entry.path] ?? ''} lengths={lengths} />
      ) : (
        <MeasurePicture active={entry?.path ?? null} book={picturedBook(answers)} />
      )}
      {entry === undefined ? (
        <BookAnswers answers={answers} setAnswers={setAnswers} />
      ) : (
        <EntryField
          title={entry.asks}
          {...{ entry, answers, setAnswers: answer }}
          refused={refusals[entry.path]}
          enterKeyHint={isLast ? 'done' : 'next'}
        />
      )}
      <p className="row dialog-buttons">
        <button type="submit" className="main">
          {isLast ? 'Start this cover' : 'Next'}
        </button>
        {entry !== undefined && usual !== null && (
          <button type="button" onClick={() => skip(entry)}>
            Skip
          </button>
        )}
        {step > 0 && (
          <button type="button" onClick={() => setStep(step - 1)}>
            Back
          </button>
        )}
      </p>
      {entry === undefined && <OtherStarts open={open} />}
    </form>
  );
}

type AnswerProps = Pick<AskingProps, 'answers'> & { readonly setAnswers: ReturnType<typeof forgiving> };

const BookAnswers = ({ answers, setAnswers }: AnswerProps) => (
  <div>
    <Choice
      title="Binding"
      options={BOOK_KINDS}
      chosen={answers.kind}
      choose={(kind) => setAnswers({ kind: kind as Answers['kind'] })}
    />
    <Choice
      title="Spine"
      options={SPINES}
      chosen={answers.spine}
      choose={(spine) => setAnswers({ spine: spine as Answers['spine'] })}
    />
  </div>
);

interface EntryFieldProps extends AnswerProps {
  readonly entry: Entry;
  readonly title: string;
  readonly refused: string | undefined;
  readonly enterKeyHint?: 'next' | 'done';
}

const EntryField = ({ entry, title, answers, setAnswers, refused, enterKeyHint = 'next' }: EntryFieldProps) => (
  <PlainField
    title={title}
    path={entry.path}
    help={entryHelp(entry)}
    text={answers.texts[entry.path] ?? ''}
    change={(text) => setAnswers({ texts: { ...answers.texts, [entry.path]: text } }, entry.path)}
    echo={echoOf(entry, answers)}
    issues={refused === undefined ? [] : [refused]}
    placeholder={emptyWords(entry, answers)}
    keys={padKeys(entry.path, answers.units)}
    enterKeyHint={enterKeyHint}
  />
);

/** Ways to start without a book in hand. */
const OtherStarts = ({ open }: Pick<AskingProps, 'open'>) => (
  <>
    <p className="help">
      Is the book not in hand? Its owner can measure it. <MeasuringSheetButton />
    </p>
    <fieldset className="row examples">
      <legend>Or look at an example</legend>
      {EXAMPLE_JOBS.map(({ id, document }) => (
        <button key={id} type="button" onClick={() => open({ document, typed: {} })}>
          {id.replace('-', ' ')}
        </button>
      ))}
    </fieldset>
  </>
);
