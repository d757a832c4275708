import { FASTENINGS, fieldNote, type JobPath, type Patch } from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { useFieldIssues, useWritten } from '../fields/fieldState.ts';
import { goToField } from '../fields/goToField.ts';
import { useBench, useDispatch } from '../state/BenchContext.tsx';

/** Width that a flap takes when it is first chosen, as a share of the book's height. Free choice. */
const USUAL_FLAP = 0.6;

/** What is added to a cover: closure, pen loop, ribbon. */
export function FittingFields() {
  const { isTurned, isColoured } = useBench(({ history: { good } }) => ({
    isTurned: good.job.pockets.construction === 'turned',
    isColoured: (good.job.construction.strap ?? good.job.construction.ribbon) !== null,
  }));
  const hasLoop = (useWritten('construction.penLoop') ?? null) !== null;
  return (
    <section aria-labelledby="fitting-fields">
      <h3 id="fitting-fields">Fittings</h3>
      <Closure />
      {isTurned && !hasLoop ? (
        <p className="help">No pen loop: turned ends have no fore-edge seam to catch it in.</p>
      ) : (
        <Fitting
          path="construction.penLoop"
          title="Pen loop"
          label="a loop"
          fields={['construction.penLoop.pen_mm', 'construction.penLoop.ease_mm', 'construction.penLoop.width_mm']}
        />
      )}
      <Fitting
        path="construction.ribbon"
        title="Ribbon"
        label="a ribbon"
        fields={['construction.ribbon.count', 'construction.ribbon.fixed_mm', 'construction.ribbon.tail_mm']}
      />
      {isColoured && (
        <p className="help">
          Metal and colours:{' '}
          <button type="button" className="quiet" onClick={() => goToField('finish.metal')}>
            Colour and finish
          </button>
        </p>
      )}
    </section>
  );
}

/** Strap or flap: its fastening and its measures. */
function Closure() {
  const dispatch = useDispatch();
  const strap = useBench(({ history: { good } }) => good.job.construction.strap);
  const height = useBench(({ history: { good } }) => good.job.book.height_mm);
  const notes = usePartIssues('construction.strap');
  const shapeIssues = useFieldIssues('construction.strap.shape');
  const written = useWritten('construction.strap');
  const shape = useWritten('construction.strap.shape') ?? 'strap';
  const chosen = written === undefined || written === null ? 'none' : String(shape);
  const choose = (value: string): readonly Patch[] => {
    if (value === 'none') return [{ path: 'construction.strap', value: undefined }];
    const isFlap = value === 'flap';
    return [
      ...(chosen === 'none' ? [{ path: 'construction.strap', value: {} } as const] : []),
      { path: 'construction.strap.shape', value: isFlap ? 'flap' : undefined },
      // A flap is as wide as a hand, a strap is narrow; and a buckle takes a strap.
      { path: 'construction.strap.width_mm', value: isFlap ? Math.round(USUAL_FLAP * height) : undefined },
      ...(isFlap && strap?.fastening === 'buckle'
        ? [{ path: 'construction.strap.fastening', value: undefined } as const]
        : []),
    ];
  };
  return (
    <div>
      <Choice
        path="construction.strap"
        title="Closure"
        options={[
          { value: 'none', label: 'none' },
          { value: 'strap', label: 'a strap' },
          { value: 'flap', label: 'a flap' },
        ]}
        chosen={chosen}
        choose={(value) => value !== chosen && dispatch({ type: 'edit', patches: choose(value) })}
        issues={shapeIssues}
        notes={notes}
      />
      {chosen !== 'none' && (
        <>
          <ChoiceField
            path="construction.strap.fastening"
            title={fieldNote('construction.strap.fastening').title}
            options={FASTENINGS.filter((value) => chosen === 'strap' || value !== 'buckle').map((value) => ({
              value,
              label: value,
            }))}
          />
          {(['width', 'anchor', 'reach', 'end'] as const).map((name) => {
            const path = `construction.strap.${name}_mm` as const;
            return (
              <FigureField
                key={path}
                path={path}
                empty="default"
                title={chosen === 'flap' ? fieldNote(path).title.replace('Strap', 'Flap') : undefined}
              />
            );
          })}
        </>
      )}
    </div>
  );
}

interface FittingProps {
  readonly path: 'construction.penLoop' | 'construction.ribbon';
  readonly title: string;
  readonly label: string;
  readonly fields: readonly JobPath[];
}

function Fitting({ path, title, label, fields }: FittingProps) {
  const dispatch = useDispatch();
  const isFitted = (useWritten(path) ?? null) !== null;
  const notes = usePartIssues(path);
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
        notes={notes}
      />
      {isFitted && fields.map((field) => <FigureField key={field} path={field} empty="default" />)}
    </div>
  );
}

/** What is wrong with a fitting as a whole; issues of a field inside stand at that field. */
function usePartIssues(path: JobPath): readonly string[] {
  const issues = useFieldIssues(path);
  const isRefused = useBench(
    ({ history: { parsed } }) => !parsed.ok && parsed.issues.some((issue) => issue.path === path),
  );
  return isRefused ? issues : [];
}
