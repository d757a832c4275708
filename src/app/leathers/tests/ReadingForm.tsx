import { useEffect, useRef, useState } from 'react';
import {
  GRAINS,
  type LengthUnit,
  MAKING_STATES,
  type Printer,
  READING_SCHEMAS,
  type ReadingList,
  readFigure,
  readingNote,
  WAYS,
} from '../../../core/index.ts';
import { today } from '../../../output/today.ts';
import { Choice } from '../../fields/Choice.tsx';
import { optionsOf } from '../../fields/optionsOf.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { useLengths } from '../../state/BenchContext.tsx';
import { type AnyReading, type Entry, READING_KINDS } from './readingKinds.ts';
import { GRAIN_WORDS, WAY_WORDS } from './stripWords.ts';

interface ReadingFormProps {
  readonly list: ReadingList;
  /** The reading before: the next is mostly of a strip like it. */
  readonly former: AnyReading | undefined;
  /** A reading that is changed; a new one without it. */
  readonly edited: AnyReading | undefined;
  readonly isFull: boolean;
  readonly keep: (reading: AnyReading) => void;
  readonly cancel: () => void;
}

/** Enters a reading of a test, or changes one. */
export function ReadingForm({ list, former, edited, isFull, keep, cancel }: ReadingFormProps) {
  const lengths = useLengths();
  const { entries, isBent } = READING_KINDS[list];
  const [texts, setTexts] = useState(() => textsOf(list, entries, edited, lengths));
  const [strip, setStrip] = useState(() => stripOf(edited, former));
  const [asked, setAsked] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const isEdit = edited !== undefined;
  // A press of Change leads to the figures.
  useEffect(() => {
    if (isEdit) toFirst(form.current);
  }, [isEdit]);

  const read = entries.map((entry) => ({ entry, ...readEntry(list, entry, texts[entry.field] ?? '', lengths.units) }));
  const isSound = read.every(({ issue }) => issue === null);
  const submit = (): void => {
    setAsked(true);
    if (!isSound || (isFull && !isEdit)) return;
    const figures = Object.fromEntries(
      read.flatMap(({ entry, value }) => (value === null ? [] : [[entry.field, value]])),
    );
    const { grain, ...flat } = strip;
    const reading = READING_SCHEMAS[list].safeParse({
      ...figures,
      ...(isBent ? { ...flat, grain } : flat),
      day: edited?.day ?? today(),
    });
    if (!reading.success) return;
    keep(reading.data);
    setTexts(textsOf(list, entries, undefined, lengths));
    setAsked(false);
    toFirst(form.current);
  };

  return (
    <form
      ref={form}
      className="reading-form"
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <Choice
        title="Strip cut"
        options={WAYS.map((value) => ({ value, label: WAY_WORDS[value] }))}
        chosen={strip.way}
        choose={(way) => setStrip({ ...strip, way })}
      />
      <Choice
        title="Worked"
        options={optionsOf(MAKING_STATES)}
        chosen={strip.worked}
        choose={(worked) => setStrip({ ...strip, worked })}
        notes={['As the strip was treated before it was read.']}
      />
      {isBent && (
        <Choice
          title="Grain"
          options={GRAINS.map((value) => ({ value, label: GRAIN_WORDS[value] }))}
          chosen={strip.grain}
          choose={(grain) => setStrip({ ...strip, grain })}
          notes={['Covers are folded with the grain outside.']}
        />
      )}
      {read.map(({ entry, issue, understood, usual, title }) => {
        const text = texts[entry.field] ?? '';
        return (
          <PlainField
            key={entry.field}
            title={title}
            help={entry.help}
            text={text}
            placeholder={usual === null ? '' : printed(list, entry.field, usual, lengths)}
            echo={understood !== text.trim() ? understood : null}
            issues={issue !== null && (asked || text.trim() !== '') ? [issue] : []}
            keys={[]}
            change={(next) => setTexts({ ...texts, [entry.field]: next })}
          />
        );
      })}
      <div className="row">
        <button type="submit" disabled={isFull && !isEdit}>
          {isEdit ? 'Keep the change' : 'Add reading'}
        </button>
        {isEdit && (
          <button type="button" onClick={cancel}>
            Cancel
          </button>
        )}
      </div>
    </form>
  );
}

const toFirst = (form: HTMLFormElement | null): void =>
  form?.querySelector<HTMLInputElement>('input[type="text"]')?.focus();

interface Strip {
  readonly way: string;
  readonly worked: string;
  readonly grain: string;
}

/** Cut and worked as the strip before; the grain is outside unless told otherwise. */
const stripOf = (edited: AnyReading | undefined, former: AnyReading | undefined): Strip => {
  const { way, worked } = edited ?? former ?? { way: 'across', worked: 'dry' };
  return { way, worked, grain: edited !== undefined && 'grain' in edited ? edited.grain : 'out' };
};

const figureOf = (reading: AnyReading, field: string): number | null => {
  const value: unknown = Object.entries(reading).find(([key]) => key === field)?.[1];
  return typeof value === 'number' ? value : null;
};

const printed = (list: ReadingList, field: string, value: number, { size }: Pick<Printer, 'size'>): string =>
  readingNote(list, field).unit === 'mm' ? size(value) : String(value);

/** What an entry starts with: the figures of a reading that is changed, else nothing. */
const textsOf = (
  list: ReadingList,
  entries: readonly Entry[],
  reading: AnyReading | undefined,
  lengths: Printer,
): Readonly<Record<string, string>> =>
  Object.fromEntries(
    entries.map(({ field }) => {
      const value = reading === undefined ? null : figureOf(reading, field);
      return [field, value === null ? '' : printed(list, field, value, lengths)];
    }),
  );

interface ReadEntry {
  readonly title: string;
  readonly value: number | null;
  readonly understood: string | null;
  readonly issue: string | null;
  /** What stands where nothing is entered. */
  readonly usual: number | null;
}

function readEntry(list: ReadingList, { field, isOpen = false }: Entry, text: string, units: LengthUnit): ReadEntry {
  const note = readingNote(list, field);
  const { title, usual } = note;
  const empty = { title, value: null, understood: null, usual };
  if (text.trim() === '') return { ...empty, issue: isOpen ? null : `${title} is missing.` };
  const reading = readFigure(note, text, units);
  if (!reading.ok) return { ...empty, issue: reading.message };
  const { value, understood } = reading;
  if (value < note.min || value > note.max)
    return { ...empty, issue: `${text.trim()} is not likely here: ${note.min} to ${note.max} is. Check the figure.` };
  return { title, value, understood, issue: null, usual };
}
