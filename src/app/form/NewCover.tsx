import { useEffect, useRef, useState } from 'react';
import {
  EXAMPLE_JOBS,
  fieldNote,
  type JobDocument,
  type JobPath,
  KIND_DEFAULTS,
  parseJob,
  patched,
  printer,
  readField,
} from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { issueWords } from '../fields/issueWords.ts';
import { PlainField } from '../fields/PlainField.tsx';
import { useBench, useDispatch } from '../state/BenchContext.tsx';
import { BOOK_KINDS, SPINES } from './BookFields.tsx';
import { MeasuringSheetButton } from './MeasuringSheetButton.tsx';
import './form.css';

const ENTRIES = [
  { path: 'book.width_mm', title: 'Width' },
  { path: 'book.height_mm', title: 'Height' },
  { path: 'book.thickness_mm', title: 'Thickness' },
  { path: 'book.boardThickness_mm', title: 'Board' },
  { path: 'leather.outside', title: 'Leather weight' },
] as const satisfies readonly { path: JobPath; title: string }[];

type Entry = (typeof ENTRIES)[number] | typeof RISE;

const HELP = (path: Entry['path']): string =>
  path === 'leather.outside' ? 'As sold: 4-5 oz or 1.6-2.0 mm.' : fieldNote(path).description;

/** Asked of a rounded spine; left empty it is estimated, and the fit is then close at best. */
const RISE = { path: 'book.spine.rise_mm', title: 'Rise of the spine' } as const;

const NEEDED = 'Needed to start a cover.';

/** Asks for the figures that a new cover needs; all else starts at its default. */
export default function NewCover({ onClose }: { readonly onClose: () => void }) {
  const units = useBench(({ view }) => view.units);
  const dispatch = useDispatch();
  const dialog = useRef<HTMLDialogElement>(null);
  const [kind, setKind] = useState<keyof typeof KIND_DEFAULTS>('hardback');
  const [spine, setSpine] = useState('flat');
  const [texts, setTexts] = useState<Readonly<Partial<Record<Entry['path'], string>>>>({});
  const [refusals, setRefusals] = useState<Readonly<Partial<Record<Entry['path'], string>>>>({});
  useEffect(() => {
    if (dialog.current?.open === false) dialog.current.showModal();
  }, []);

  const entries = spine === 'rounded' ? [...ENTRIES.slice(0, 3), RISE, ...ENTRIES.slice(3)] : ENTRIES;

  const start = (): void => {
    const filled = entries.flatMap(({ path }) => {
      const text = texts[path] ?? '';
      return text.trim() === '' ? [] : [{ path, text, reading: readField(path, text, units) }];
    });
    const patches = filled.flatMap(({ reading }) => (reading.ok ? reading.value : []));
    const blank: JobDocument = {
      format: 'coverwright-job',
      version: 2,
      name: 'Untitled cover',
      work: { units },
      book: { kind, ...(spine === 'rounded' && { spine: { shape: spine } }) },
    };
    const document = patched(blank, patches);
    const parsed = parseJob(document);
    const refused = entries.flatMap(({ path }) => {
      const entry = filled.find((other) => other.path === path);
      if (entry && !entry.reading.ok) return [[path, entry.reading.message]];
      const issue = parsed.ok ? undefined : parsed.issues.find((other) => other.path.startsWith(path));
      return issue === undefined ? [] : [[path, entry ? issueWords(issue) : NEEDED]];
    });
    setRefusals(Object.fromEntries(refused));
    if (refused.length > 0 || !parsed.ok) return;
    const typed = filled.map(({ path, text }) => [path, { text, unit: units }] as const);
    dispatch({ type: 'open', document, typed: Object.fromEntries(typed) });
    onClose();
  };

  const echoOf = (path: Entry['path']): string | null => {
    const text = (texts[path] ?? '').trim();
    const reading = text === '' ? null : readField(path, text, units);
    return reading?.ok && reading.understood !== text ? reading.understood : null;
  };

  return (
    <dialog ref={dialog} className="new-cover" aria-labelledby="new-cover-title" onClose={onClose}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          start();
        }}
      >
        <h2 id="new-cover-title">New cover</h2>
        <p>Measure the book closed. Everything else starts at its usual value and can be changed afterwards.</p>
        <Choice
          title="Binding"
          options={BOOK_KINDS}
          chosen={kind}
          choose={(value) => setKind(value as keyof typeof KIND_DEFAULTS)}
        />
        <Choice title="Spine" options={SPINES} chosen={spine} choose={setSpine} />
        {entries.map(({ path, title }) => (
          <PlainField
            key={path}
            title={title}
            help={HELP(path)}
            text={texts[path] ?? ''}
            change={(text) => setTexts({ ...texts, [path]: text })}
            echo={echoOf(path)}
            issues={refusals[path] === undefined ? [] : [refusals[path]]}
            placeholder={
              path === 'book.boardThickness_mm'
                ? `${printer(units).size(KIND_DEFAULTS[kind].boardThickness_mm)} usual`
                : path === RISE.path
                  ? 'or estimated'
                  : ''
            }
          />
        ))}
        <p className="help">
          Is the book not in hand? Its owner can measure it. <MeasuringSheetButton />
        </p>
        <p className="row dialog-buttons">
          <button type="submit" className="main">
            Start this cover
          </button>
          <button type="button" onClick={onClose}>
            Cancel
          </button>
        </p>
        <fieldset className="row examples">
          <legend>Or look at an example</legend>
          {EXAMPLE_JOBS.map(({ id, document }) => (
            <button
              key={id}
              type="button"
              onClick={() => {
                dispatch({ type: 'open', document });
                onClose();
              }}
            >
              {id.replace('-', ' ')}
            </button>
          ))}
        </fieldset>
      </form>
    </dialog>
  );
}
