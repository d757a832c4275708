import { valueAt } from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { fieldIssues } from '../fields/fieldState.ts';
import { useBench } from '../state/BenchContext.tsx';

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
  const { history, dispatch } = useBench();
  const isTurned = history.good.job.pockets.construction === 'turned';
  return (
    <section aria-labelledby="fitting-fields">
      <h3 id="fitting-fields">Fittings</h3>
      {FITTINGS.map(({ id, title, label, fields }) => {
        const path = `construction.${id}`;
        const isFitted = (valueAt(history.document, path) ?? null) !== null;
        // Issues of a field inside stand at that field.
        const isRefused = !history.parsed.ok && history.parsed.issues.some((issue) => issue.path === path);
        const cannot = id === 'penLoop' && isTurned && !isFitted;
        if (cannot)
          return (
            <p key={id} className="help">
              No pen loop: turned ends have no fore-edge seam to catch it in.
            </p>
          );
        return (
          <div key={id}>
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
            {isFitted && fields.map((field) => <FigureField key={field} path={`${path}.${field}`} empty="default" />)}
          </div>
        );
      })}
    </section>
  );
}
