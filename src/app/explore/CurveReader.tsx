import { EXPLORE_RESULTS, type ExploreField } from '../../core/index.ts';
import { useDispatch, useLengths } from '../state/BenchContext.tsx';
import { MARGIN } from './chartLayout.ts';
import { fieldName } from './fieldWords.ts';
import { fieldFigure, resultFigure, smallFigure } from './figure.ts';
import { growthWords, readingWords } from './readingWords.ts';
import type { Answered } from './useExplored.ts';

interface CurveReaderProps {
  readonly answered: Answered<'curve'>;
  /** Index of the point that is read. */
  readonly index: number;
  /** The field as the job stands now. */
  readonly field: ExploreField;
  readonly onRead: (at: number) => void;
}

/** Reads the curve at a point chosen by a slider, and puts the field's value there into the job. */
export function CurveReader({ answered: { question, answer }, index, field, onRead }: CurveReaderProps) {
  const dispatch = useDispatch();
  const lengths = useLengths();
  const { points, field: read } = answer.curve;
  const result = EXPLORE_RESULTS.find(({ id }) => id === question.resultId)!;
  const [across, upright] = [fieldFigure(read, lengths), resultFigure(result, lengths)];
  const point = points[index]!;
  const isUsable = field.id === read.id && point.at !== field.present && !('issue' in point);
  return (
    <div className="explore-reader">
      <input
        type="range"
        min={0}
        max={points.length - 1}
        step={1}
        value={index}
        style={{ marginInlineStart: MARGIN.left - 8, inlineSize: `calc(100% - ${MARGIN.left + MARGIN.right - 16}px)` }}
        aria-label={`Read along ${fieldName(read)}`}
        aria-valuetext={across.text(point.at)}
        onChange={(event) => onRead(points[Number(event.target.value)]!.at)}
      />
      <div className="row explore-reading">
        <output aria-live="polite">
          {readingWords(point, result, across, upright)}{' '}
          {growthWords(points, index, read.step, across, smallFigure(lengths))}
        </output>
        <button
          type="button"
          className="main"
          disabled={!isUsable}
          onClick={() => dispatch({ type: 'edit', patches: field.changes(point.at) })}
        >
          Put {across.text(point.at)} into the job
        </button>
      </div>
    </div>
  );
}
