import { type JobPath, valueAt } from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { fieldIssues } from '../fields/fieldState.ts';
import { useBench } from '../state/BenchContext.tsx';

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
  const { history, dispatch } = useBench();
  const isTurned = history.good.job.pockets.construction === 'turned';
  return (
    <section aria-labelledby="fitting-fields">
      <h3 id="fitting-fields">Fittings</h3>
      {FITTINGS.map(({ path, title, label, fields }) => {
        const isFitted = (valueAt(history.document, path) ?? null) !== null;
        // Issues of a field inside stand at that field.
        const isRefused = !history.parsed.ok && history.parsed.issues.some((issue) => issue.path === path);
        const cannot = path === 'construction.penLoop' && isTurned && !isFitted;
        if (cannot)
          return (
            <p key={path} className="help">
              No pen loop: turned ends have no fore-edge seam to catch it in.
            </p>
          );
        return (
          <div key={path}>
            <Choice
              title={title}
              options={[
                { value: 'none', label: 'none' },
                { value: 'fitted', label },
              ]}
              chosen={isFitted ? 'fitted' : 'none'}
              choose={(value) =>
                dispatch({ type: 'edit', patches: [{ path, value: value === 'fitted' ? {} : undefined }] })
              }
              notes={isRefused ? fieldIssues(history, path) : []}
            />
            {isFitted && fields.map((field) => <FigureField key={field} path={field} empty="default" />)}
          </div>
        );
      })}
    </section>
  );
}
