import {
  designNote,
  type JobPath,
  type Reading,
  readFigure,
  refusal,
  signed,
  type ToolingDesign,
} from '../../../core/index.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { padKeys } from '../../fields/pad.ts';
import { useDraft } from '../../fields/useDraft.ts';
import { useLengths } from '../../state/BenchContext.tsx';
import { useToolingEdits } from './useTooling.ts';

interface DesignFigureProps {
  readonly index: number;
  readonly design: ToolingDesign;
  /** Path of the figure within the design, as `x_mm` or `repeat.rows`. */
  readonly at: string;
}

/** A figure of a design, with title, help and range from the schema. */
export function DesignFigure({ index, design, at }: DesignFigureProps) {
  const lengths = useLengths();
  const { change } = useToolingEdits();
  const note = designNote(at);
  const [part, field] = at.includes('.') ? (at.split('.') as [string, string]) : [undefined, at];
  const holder = (part === undefined ? design : design[part as keyof ToolingDesign]) as unknown as Record<
    string,
    number
  >;
  const value = holder[field]!;
  const print = (figure: number): string =>
    note.unit === 'mm' ? lengths.size(figure) : `${signed(String(Number(figure.toFixed(3))))} ${note.unit}`.trim();
  const read = (text: string): Reading<number> => {
    const reading = readFigure(note, text, lengths.units);
    if (!reading.ok) return reading;
    const allowed = `${print(note.min)} to ${print(note.max)}`;
    if (note.unit === '' && !Number.isInteger(reading.value))
      return refusal(text, 'a count', 'Write a whole number.', allowed);
    if (reading.value >= note.min && reading.value <= note.max) return reading;
    return refusal(text, 'in the range of this field', 'Check the figure and its unit.', allowed);
  };
  const path = `tooling.designs.${index}.${at}`;
  const {
    text,
    issues,
    change: type,
  } = useDraft(path, value, print, read, (next) =>
    change(index, part === undefined ? { [field]: next } : { [part]: { ...holder, [field]: next } }, path),
  );
  return (
    <PlainField
      path={path}
      title={note.title}
      help={note.description}
      text={text}
      change={type}
      issues={issues}
      keys={note.unit === 'mm' ? padKeys(LENGTH_FIELD, lengths.units) : []}
    />
  );
}

/** Any length of the job: a figure of a design is typed by the same keys. */
const LENGTH_FIELD: JobPath = 'tooling.depth_mm';
