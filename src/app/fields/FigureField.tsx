import { memo } from 'react';
import { fieldNote, type JobPath, KIND_DEFAULTS, signed, valueAt } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import { TypedField } from './TypedField.tsx';

const KIND_WORDS = { hardback: 'a hardback', paperback: 'a paperback', limp: 'a limp book' } as const;

interface FigureFieldProps {
  readonly path: JobPath;
  /**
   * What an empty field means: `required` it must be filled, `default` the documented default applies, `decided` the tool
   * works it out, `estimated` the tool takes a value that ought to be measured, `unmeasured` the measure was not taken.
   */
  readonly empty: 'required' | 'default' | 'decided' | 'estimated' | 'unmeasured';
  /** The value that the tool decides on or takes, where the job itself leaves it open. */
  readonly decided?: number;
  /** Put before the title where the same word occurs twice on the bench. */
  readonly title?: string;
  /** Path of another field that says the same in other terms: the one that was typed last counts. */
  readonly insteadOf?: JobPath;
}

const EMPTY_LABELS: Partial<Record<FigureFieldProps['empty'], string>> = {
  decided: 'Let the tool work it out',
  unmeasured: 'Clear',
};

/** A length, angle, ratio or stiffness of the job, with title, help and default from the schema. */
export const FigureField = memo(function FigureField({ path, empty, decided, title, insteadOf }: FigureFieldProps) {
  const { written, used, kind, lengths, isOverruled } = useBench(({ history, lengths }) => ({
    written: valueAt(history.document, path),
    used: valueAt(history.good.job, path),
    kind: history.good.job.book.kind,
    lengths,
    isOverruled: insteadOf !== undefined && valueAt(history.good.document, insteadOf) != null,
  }));
  const note = fieldNote(path);
  const print = (value: unknown): string => {
    if (typeof value !== 'number') return '';
    if (note.unit === 'mm') return lengths.size(value);
    return note.unit === '%'
      ? lengths.share(value, 2)
      : `${signed(String(Number(value.toFixed(4))))} ${note.unit}`.trim();
  };
  const inForce = decided ?? used;
  const stand = print(inForce);
  const usual = valueAt({ book: KIND_DEFAULTS[kind] }, path);
  const placeholder = {
    required: '',
    default: `${stand}, usual`,
    decided: stand === '' ? 'worked out' : `${stand}, worked out`,
    estimated: `${stand}, estimated: measure it`,
    unmeasured: path.endsWith('foldThickness_mm')
      ? 'not skived'
      : path.endsWith('strainLimit')
        ? 'not tested'
        : path === 'order.clip_mm'
          ? 'not clipped'
          : 'not taken',
  }[empty];
  return (
    <TypedField
      path={path}
      title={title ?? note.title}
      help={
        usual === undefined ? note.description : `${note.description} Usual for ${KIND_WORDS[kind]}: ${print(usual)}.`
      }
      shown={isOverruled ? '' : print(written)}
      placeholder={placeholder}
      along={insteadOf && [{ path: insteadOf, value: undefined }]}
      isOverruled={isOverruled}
      whenEmptied={empty === 'required' ? undefined : [{ path, value: undefined }]}
      emptyLabel={EMPTY_LABELS[empty]}
    />
  );
});
