import { changeOf, MAKING_STATES } from '../../core/index.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { useBench, useLengths } from '../state/BenchContext.tsx';

const STATES = MAKING_STATES.map((value) => ({ value, label: value }));

/** How the leather is worked once it is cut, and how its size changes by that. */
export function MakingFields() {
  const { job, pieces } = useBench(({ design }) => design);
  const lengths = useLengths();
  const { along, across } = changeOf(job);
  const cost = (change: number, size: number, of: string): string =>
    `${change < 0 ? 'Shrinks' : 'Grows'} ${lengths.share(Math.abs(change), 2)}: ${lengths.length(Math.abs(change) * size)} of ${of}.`;
  const costs = [
    ...(across === 0 ? [] : [cost(across, pieces.outside.width, 'width')]),
    ...(along === 0 ? [] : [cost(along, pieces.outside.height, 'height')]),
  ];
  return (
    <section aria-labelledby="making-fields">
      <h3 id="making-fields">Making</h3>
      <ChoiceField
        path="making.state"
        title="Worked"
        options={STATES}
        help={
          costs.length === 0 ? 'Worked dry the leather keeps its size.' : `${costs.join(' ')} The cut allows for it.`
        }
      />
      <FigureField path="making.changeAlong" empty="default" decided={along} />
      <FigureField path="making.changeAcross" empty="default" decided={across} />
    </section>
  );
}
