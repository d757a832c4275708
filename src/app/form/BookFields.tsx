import { riseOf, valueAt } from '../../core/index.ts';
import { Assumptions } from '../fields/Assumptions.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { CheckRow } from '../panel/CheckRow.tsx';
import { useBench } from '../state/BenchContext.tsx';
import { addressOf } from '../state/place.ts';
import { Measures } from './MeasurePicture.tsx';
import { NominalSizes } from './NominalSizes.tsx';

export const BOOK_KINDS = [
  { value: 'hardback', label: 'hardback' },
  { value: 'paperback', label: 'paperback' },
  { value: 'limp', label: 'limp' },
];

export const SPINES = [
  { value: 'flat', label: 'flat' },
  { value: 'rounded', label: 'rounded' },
];

export function BookFields() {
  const { shape, rise } = useBench(({ history: { document, good } }) => ({
    shape: valueAt(document, 'book.spine.shape') ?? good.job.book.spine.shape,
    rise: Math.round(10 * riseOf(good.job.book)) / 10,
  }));
  return (
    <section aria-label="Book">
      <Measures title="The book, closed">
        <FigureField path="book.width_mm" empty="required" />
        <FigureField path="book.height_mm" empty="required" />
        <FigureField path="book.thickness_mm" empty="required" />
        <FigureField path="book.boardThickness_mm" empty="default" />
        {shape === 'rounded' && <FigureField path="book.spine.rise_mm" empty="estimated" decided={rise} />}
        <a className="link" href={addressOf('photograph')}>
          Measure by photograph
        </a>
      </Measures>
      <ChoiceField path="book.kind" title="Binding" options={BOOK_KINDS} />
      <ChoiceField
        path="book.spine.shape"
        title="Spine"
        options={SPINES}
        along={(value) => (value === 'flat' ? [{ path: 'book.spine.rise_mm', value: undefined }] : [])}
      />
      <NominalSizes />
      <details>
        <summary>Measured round the book: tape, rolling, open flat</summary>
        <Measures title="Round the book">
          <FigureField path="book.measured.closedWrap_mm" empty="unmeasured" />
          <FigureField path="book.measured.rolledHalf_mm" empty="unmeasured" />
          <FigureField path="book.measured.openFlatWidth_mm" empty="unmeasured" />
        </Measures>
      </details>
      <CrossCheck />
      <details>
        <summary>More measures</summary>
        <Measures title="More measures">
          <FigureField path="book.foreEdgeThickness_mm" empty="default" />
          <FigureField path="book.cornerRadius_mm" empty="default" />
          <FigureField path="book.square_mm" empty="default" />
        </Measures>
        <FigureField path="book.measured.error_mm" empty="default" />
      </details>
      <Assumptions title="Assumed of the book">
        <FigureField path="book.jointDip_mm" empty="default" />
        <FigureField path="book.foldBack_deg" empty="default" />
        <FigureField path="book.pageGive" empty="default" />
      </Assumptions>
    </section>
  );
}

/** Beside the measures: whether the ways of measuring agree, once more than one was used. */
function CrossCheck() {
  const check = useBench(({ report }) => report.checks.find(({ id }) => id === 'measures'));
  if (check === undefined || check.bound === null) return null;
  return (
    <ul aria-label="Cross-check of the measures">
      <CheckRow check={check} />
    </ul>
  );
}
