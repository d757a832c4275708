import { Choice } from '../fields/Choice.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { useFieldIssues, useWritten } from '../fields/fieldState.ts';
import { useBench, useDispatch } from '../state/BenchContext.tsx';

const FITTINGS = [
  {
    id: 'strap',
    title: 'Closure strap',
    label: 'a strap',
    fields: ['width_mm', 'anchor_mm', 'reach_mm', 'end_mm'],
  },
  { id: 'penLoop', title: 'Pen loop', label: 'a loop', fields: ['pen_mm', 'ease_mm', 'width_mm'] },
  { id: 'ribbon', title: 'Ribbon', label: 'a ribbon', fields: ['count', 'fixed_mm', 'tail_mm'] },
] as const;

/** What is added to a cover: strap, pen loop, ribbon. */
export function FittingFields() {
  return (
    <section aria-labelledby="fitting-fields">
      <h3 id="fitting-fields">Fittings</h3>
      {FITTINGS.map((fitting) => (
        <Fitting key={fitting.id} {...fitting} />
      ))}
    </section>
  );
}

function Fitting({ id, title, label, fields }: (typeof FITTINGS)[number]) {
  const path = `construction.${id}`;
  const dispatch = useDispatch();
  const isFitted = (useWritten(path) ?? null) !== null;
  const issues = useFieldIssues(path);
  const { isTurned, isRefused } = useBench(({ history: { good, parsed } }) => ({
    isTurned: good.job.pockets.construction === 'turned',
    // Issues of a field inside stand at that field.
    isRefused: !parsed.ok && parsed.issues.some((issue) => issue.path === path),
  }));
  if (id === 'penLoop' && isTurned && !isFitted)
    return <p className="help">No pen loop: turned ends have no fore-edge seam to catch it in.</p>;
  return (
    <div>
      <Choice
        title={title}
        options={[
          { value: 'none', label: 'none' },
          { value: 'fitted', label },
        ]}
        chosen={isFitted ? 'fitted' : 'none'}
        choose={(value) => dispatch({ type: 'edit', patches: [{ path, value: value === 'fitted' ? {} : undefined }] })}
        notes={isRefused ? issues : []}
      />
      {isFitted && fields.map((field) => <FigureField key={field} path={`${path}.${field}`} empty="default" />)}
    </div>
  );
}
