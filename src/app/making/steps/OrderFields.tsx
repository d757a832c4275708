import {
  holeNoun,
  isStepAskedFor,
  isStepTaken,
  OPTIONAL_STEP_NAMES,
  OPTIONAL_STEPS,
  type OptionalStep,
} from '../../../core/index.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { FigureField } from '../../fields/FigureField.tsx';
import { useFieldIssues } from '../../fields/fieldState.ts';
import { optionsOf } from '../../fields/optionsOf.ts';
import { useBench, useDispatch } from '../../state/BenchContext.tsx';

const HOLES = optionsOf(['before joining', 'after cementing']);
const DYEING = optionsOf(['before tooling', 'after tooling']);

/** The order of work as the maker does it: which steps are taken, when the holes are made, whether corners are clipped. */
export function OrderFields() {
  const job = useBench(({ design }) => design.job);
  const holes = holeNoun(job);
  return (
    <section aria-label="Your order">
      <details>
        <summary>Your order</summary>
        <ChoiceField
          path="order.holes"
          title={holes === 'slits' ? 'Slits' : 'Holes'}
          options={HOLES}
          help="Before: each piece from the template. After: along a scribed line, through all layers at once."
        />
        {job.pockets.construction === 'separate' && <FigureField path="order.clip_mm" empty="unmeasured" />}
        <fieldset>
          <legend>Steps</legend>
          {OPTIONAL_STEPS.map((id) => (
            <StepField key={id} id={id} />
          ))}
          <p className="help">
            A step is ticked by itself where the job asks for it: how the leather is worked, designs to tool. Lining and
            cementing belong to assembling, unless they come before the {holes}.
          </p>
        </fieldset>
        {isStepTaken(job, 'dye') && <ChoiceField path="order.dyeing" title="Dyed" options={DYEING} />}
      </details>
    </section>
  );
}

/** One step that a cover may do without. What the job asks for by itself is not written into it. */
function StepField({ id }: { readonly id: OptionalStep }) {
  const dispatch = useDispatch();
  const path = `order.${id}` as const;
  const { isTaken, isAskedFor } = useBench(({ history: { good } }) => ({
    isTaken: isStepTaken(good.job, id),
    isAskedFor: isStepAskedFor(good.job, id),
  }));
  const issues = useFieldIssues(path);
  const take = (taken: boolean): void =>
    dispatch({ type: 'edit', patches: [{ path, value: taken === isAskedFor ? undefined : taken }] });
  return (
    <div>
      <label className="tick">
        <input
          type="checkbox"
          data-path={path}
          checked={isTaken}
          aria-describedby={`${path}-issue`}
          onChange={(event) => take(event.target.checked)}
        />
        <span>{OPTIONAL_STEP_NAMES[id]}</span>
      </label>
      <p id={`${path}-issue`} className="issue">
        {issues.join(' ')}
      </p>
    </div>
  );
}
