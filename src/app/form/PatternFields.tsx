import { INCH_STEPS } from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { useBench, useDispatch, useLengths } from '../state/BenchContext.tsx';

export function PatternFields() {
  const { width, height } = useBench(({ design }) => design.pieces.outside);
  const ease = useBench(({ design }) => design.pieces.ease);
  return (
    <section aria-labelledby="pattern-fields">
      <h2 id="pattern-fields">Ease and cut size</h2>
      <FigureField path="ease.foreEdge_mm" empty="decided" decided={rounded(ease.foreEdge_mm)} />
      <FigureField path="ease.head_mm" empty="decided" decided={rounded(ease.head_mm)} />
      <FigureField path="ease.tail_mm" empty="decided" decided={rounded(ease.tail_mm)} />
      <FigureField path="ease.share" empty="default" />
      <FigureField path="loosest.foreEdge_mm" empty="default" />
      <FigureField path="loosest.head_mm" empty="default" />
      <FigureField path="loosest.tail_mm" empty="default" />
      <FigureField path="pattern.outsideWidth_mm" empty="decided" decided={width} />
      <FigureField path="pattern.outsideHeight_mm" empty="decided" decided={height} />
      <CutStepField />
    </section>
  );
}

/** An ease that is worked out, mm: nothing finer than 0.1 mm is known of it. */
const rounded = (ease: number): number => Math.round(10 * ease) / 10;

/** The step that cut sizes lie on: typed in millimetres, one of two fractions in inches. */
function CutStepField() {
  const step = useBench(({ design }) => design.job.work.cutStep_mm);
  const dispatch = useDispatch();
  const lengths = useLengths();
  if (lengths.units === 'mm')
    return <FigureField path={step === null ? 'pattern.rounding_mm' : 'work.cutStep_mm'} empty="default" />;
  return (
    <Choice
      title="Rounded up to"
      options={INCH_STEPS.map((each) => ({ value: String(each), label: lengths.size(each) }))}
      chosen={String(step ?? INCH_STEPS[0])}
      choose={(value) => dispatch({ type: 'edit', patches: [{ path: 'work.cutStep_mm', value: Number(value) }] })}
      notes={['Cut sizes are multiples of this.']}
    />
  );
}
