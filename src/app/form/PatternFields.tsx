import { FigureField } from '../fields/FigureField.tsx';
import { useBench } from '../state/BenchContext.tsx';
import { CutStepField } from './CutStepField.tsx';

export function PatternFields() {
  const { width, height } = useBench(({ design }) => design.pieces.outside);
  return (
    <section aria-labelledby="pattern-fields">
      <h2 id="pattern-fields">Ease and cut size</h2>
      <FigureField path="ease.foreEdge_mm" empty="default" />
      <FigureField path="ease.head_mm" empty="default" />
      <FigureField path="ease.tail_mm" empty="default" />
      <FigureField path="loosest.foreEdge_mm" empty="default" />
      <FigureField path="loosest.head_mm" empty="default" />
      <FigureField path="loosest.tail_mm" empty="default" />
      <FigureField path="pattern.outsideWidth_mm" empty="decided" decided={width} />
      <FigureField path="pattern.outsideHeight_mm" empty="decided" decided={height} />
      <CutStepField />
    </section>
  );
}
