import { MOST_DESIGNS, MOST_LETTERS, type ToolingArea } from '../../../core/index.ts';
import { FileButton } from '../../fields/FileButton.tsx';
import { useBench } from '../../state/BenchContext.tsx';
import { useArtworkFiles } from './useArtworkFiles.ts';
import { useToolingEdits } from './useTooling.ts';

interface AddDesignProps {
  readonly area: ToolingArea;
  /** Designs that the job has: with none, one button is the one to begin with. */
  readonly count: number;
  readonly added: (index: number) => void;
}

/** Height of the first letters of a title, mm, and the share of a narrow face that they take at most. */
const LETTERS = { height: 10, share: 0.5 };

/** Begins a border, a title or a drawing on a face. */
export function AddDesign({ area, count, added }: AddDesignProps) {
  const { add } = useToolingEdits();
  const name = useBench(({ history }) => history.good.job.name);
  const { reading, open } = useArtworkFiles();
  const { face, clear } = area;
  const addTitle = (): void => {
    const isSpine = face === 'spine';
    const room =
      clear === null ? LETTERS.height : LETTERS.share * (isSpine ? clear.x[1] - clear.x[0] : clear.y[1] - clear.y[0]);
    const height = Math.max(1, Math.min(LETTERS.height, Math.floor(room)));
    added(
      add({
        kind: 'title',
        area: face,
        text: name.trim().slice(0, MOST_LETTERS) || 'Title',
        height_mm: height,
        ...(isSpine && { reading: 'down' }),
      }),
    );
  };
  if (count >= MOST_DESIGNS)
    return <p className="help">A job has {MOST_DESIGNS} designs at most. Take one out first.</p>;
  return (
    <p className="design-acts">
      <button
        type="button"
        className={count === 0 ? 'main' : undefined}
        onClick={() => added(add({ kind: 'border', area: face }))}
      >
        Add a border
      </button>
      <button type="button" onClick={addTitle}>
        Add a title
      </button>
      <FileButton
        title="Add a drawing"
        asks="SVG, PNG or JPEG file"
        accept=".svg,.png,.jpg,.jpeg,image/svg+xml,image/png,image/jpeg"
        onFile={(file) => void open(file, area, added)}
      />
      <span className="help" role="status">
        {reading.status === 'reading' && 'The drawing is being read.'}
      </span>
      {reading.status === 'refused' && (
        <span className="issue" role="alert">
          {reading.why}
        </span>
      )}
    </p>
  );
}
