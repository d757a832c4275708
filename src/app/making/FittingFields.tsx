import type { JobPath } from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { useFieldIssues, useWritten } from '../fields/fieldState.ts';
import { useBench, useDispatch } from '../state/BenchContext.tsx';

const FITTINGS = [
  {
    path: 'construction.strap',
    title: 'Closure strap',
    label: 'a strap',
    fields: [
      'construction.strap.width_mm',
      'construction.strap.anchor_mm',
      'construction.strap.reach_mm',
      'construction.strap.end_mm',
    ],
  },
  {
    path: 'construction.penLoop',
    title: 'Pen loop',
    label: 'a loop',
    fields: ['construction.penLoop.pen_mm', 'construction.penLoop.ease_mm', 'construction.penLoop.width_mm'],
  },
  {
    path: 'construction.ribbon',
    title: 'Ribbon',
    label: 'a ribbon',
    fields: ['construction.ribbon.count', 'construction.ribbon.fixed_mm', 'construction.ribbon.tail_mm'],
  },
] as const satisfies readonly { path: JobPath; title: string; label: string; fields: readonly JobPath[] }[];

/** What is added to a cover: strap, pen loop, ribbon. */
export function FittingFields() {
  return (
    <section aria-labelledby="fitting-fields">
      <h3 id="fitting-fields">Fittings</h3>
      {FITTINGS.map((fitting) => (
        <Fitting key={fitting.path} {...fitting} />
      ))}
    </section>
  );
}

function Fitting({ path, title, label, fields }: (typeof FITTINGS)[number]) {
  const dispatch = useDispatch();
  const isFitted = (useWritten(path) ?? null) !== null;
  const issues = useFieldIssues(path);
  const { isTurned, isRefused } = useBench(({ history: { good, parsed } }) => ({
    isTurned: good.job.pockets.construction === 'turned',
    // Issues of a field inside stand at that field.
    isRefused: !parsed.ok && parsed.issues.some((issue) => issue.path === path),
  }));
  if (path === 'construction.penLoop' && isTurned && !isFitted)
    return <p className="help">No pen loop: turned ends have no fore-edge seam to catch it in.</p>;
  return (
    <div>
      <Choice
        path={path}
        title={title}
        options={[
          { value: 'none', label: 'none' },
          { value: 'fitted', label },
        ]}
        chosen={isFitted ? 'fitted' : 'none'}
        choose={(value) => dispatch({ type: 'edit', patches: [{ path, value: value === 'fitted' ? {} : undefined }] })}
        notes={isRefused ? issues : []}
      />
      {isFitted && fields.map((field) => <FigureField key={field} path={field} empty="default" />)}
    </div>
  );
}
