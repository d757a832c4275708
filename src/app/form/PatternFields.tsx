import { INCH_STEPS, MM_PER_INCH } from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { useBench, useDispatch, useLengths } from '../state/BenchContext.tsx';

export function PatternFields() {
  const { width, height } = useBench(({ design }) => design.pieces.outside);
  const ease = useBench(({ design }) => design.pieces.ease);
  const { units } = useLengths();
  // Nothing finer is known of an ease that is worked out.
  const step = units === 'mm' ? 0.1 : MM_PER_INCH / 64;
  const shown = (length: number): number => step * Math.round(length / step);
  return (
    <section aria-labelledby="pattern-fields">
      <h3 id="pattern-fields">Ease and cut size</h3>
      <FigureField path="ease.foreEdge_mm" empty="decided" decided={shown(ease.foreEdge_mm)} />
      <FigureField path="ease.head_mm" empty="decided" decided={shown(ease.head_mm)} />
      <FigureField path="ease.tail_mm" empty="decided" decided={shown(ease.tail_mm)} />
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
