import { fieldNote, type Job, valueAt } from '../../../core/index.ts';
import { TypedField } from '../../fields/TypedField.tsx';
import { useBench } from '../../state/BenchContext.tsx';

/** One price of the maker's; left empty, nothing is charged and the line is named as without a price. */
export function RateField({ name }: { readonly name: keyof Job['rates']['prices'] }) {
  const { history } = useBench();
  const path = `rates.prices.${name}` as const;
  const { title, description } = fieldNote(path);
  const written = valueAt(history.document, path);
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
