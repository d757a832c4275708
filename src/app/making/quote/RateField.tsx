import { fieldNote, type Job } from '../../../core/index.ts';
import { useWritten } from '../../fields/fieldState.ts';
import { TypedField } from '../../fields/TypedField.tsx';

/** One price of the maker's; left empty, nothing is charged and the line is named as without a price. */
export function RateField({ name }: { readonly name: keyof Job['rates']['prices'] }) {
  const path = `rates.prices.${name}` as const;
  const { title, description } = fieldNote(path);
  const written = useWritten(path);
  return (
    <TypedField
      path={path}
      title={title}
      help={description}
      shown={typeof written === 'number' ? String(written) : ''}
      placeholder="no price"
      whenEmptied={[{ path, value: undefined }]}
      emptyLabel="Take out"
    />
  );
}
