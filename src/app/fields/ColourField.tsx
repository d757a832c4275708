import { colourWords, fieldNote, type JobPath, valueAt } from '../../core/index.ts';
import { useBench, useDispatch } from '../state/BenchContext.tsx';
import { TypedField } from './TypedField.tsx';
import './colourField.css';

interface ColourFieldProps {
  readonly path: JobPath;
  /** In place of the field's own, where the same word occurs twice. */
  readonly title?: string;
}

/** A colour of the job, chosen from the browser's own picker or typed as `#rrggbb`. */
export function ColourField({ path, title = fieldNote(path).title }: ColourFieldProps) {
  const dispatch = useDispatch();
  const { written, used } = useBench(({ history }) => ({
    written: valueAt(history.document, path),
    used: String(valueAt(history.good.job, path)),
  }));
  return (
    <div className="colour-field">
      <input
        type="color"
        aria-label={`${title}, from a palette`}
        value={used}
        // A drag in the palette is one step of undo.
        onChange={({ target: { value } }) =>
          dispatch({ type: 'edit', key: path, patches: [{ path, value }], typed: { [path]: undefined } })
        }
        onBlur={() => dispatch({ type: 'settle' })}
      />
      <TypedField
        path={path}
        title={title}
        help={`Pictured ${colourWords(used)}. Type a colour as #8f5b3a, or press the patch beside it.`}
        shown={typeof written === 'string' ? written : ''}
        placeholder={`${used}, usual`}
        whenEmptied={[{ path, value: undefined }]}
      />
    </div>
  );
}
