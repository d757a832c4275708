import {
  BACKBONES,
  changeOf,
  changeOnHide,
  DRESSINGS,
  isChangeTested,
  MAKING_STATES,
  TEST_FIRST,
} from '../../core/index.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { optionsOf } from '../fields/optionsOf.ts';
import { useBench, useLengths } from '../state/BenchContext.tsx';

const WAYS = BACKBONES.map((value) => ({
  value,
  label: value === 'upright' ? 'from head to tail' : 'from side to side',
}));

/** How the leather is worked and finished once it is cut, and how its size changes by that. */
export function MakingFields() {
  const { job, pieces } = useBench(({ design }) => design);
  const lengths = useLengths();
  const { width, height } = changeOf(job);
  const { along, across } = changeOnHide(job);
  const cost = (change: number, size: number, of: string): string =>
    `${change < 0 ? 'Shrinks' : 'Grows'} ${lengths.share(Math.abs(change), 2)}: ${lengths.length(Math.abs(change) * size)} of ${of}.`;
  const costs = [
    ...(width === 0 ? [] : [cost(width, pieces.outside.width, 'width')]),
    ...(height === 0 ? [] : [cost(height, pieces.outside.height, 'height')]),
  ];
  const isTested = isChangeTested(job);
  return (
    <section aria-labelledby="making-fields">
      <h3 id="making-fields">Making</h3>
      <ChoiceField
        path="making.state"
        title="Worked"
        options={optionsOf(MAKING_STATES)}
        help={
          costs.length === 0 ? 'Worked dry the leather keeps its size.' : `${costs.join(' ')} The cut allows for it.`
        }
      />
      <ChoiceField path="making.dressing" title="Finished with" options={optionsOf(DRESSINGS)} />
      {!isTested && <p className="caution">{TEST_FIRST}</p>}
      <FigureField path="making.changeAlong" empty="default" decided={along} />
      <FigureField path="making.changeAcross" empty="default" decided={across} />
      <ChoiceField path="making.backbone" title="Backbone on the outside" options={WAYS} />
      <FigureField path="making.hand.margin_mm" empty="default" />
      <FigureField path="making.hand.cutting_mm" empty="default" />
    </section>
  );
}
