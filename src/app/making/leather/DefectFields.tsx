import type { JobPath, Vec2 } from '../../../core/index.ts';
import { useWritten } from '../../fields/fieldState.ts';
import { useDispatch } from '../../state/BenchContext.tsx';
import { PolygonField } from './PolygonField.tsx';

/** A defect as it is first marked, to be moved to its place. */
const NEW_DEFECT: readonly Vec2[] = [
  [50, 50],
  [80, 50],
  [80, 80],
  [50, 80],
];

/** Scars, holes and loose places to avoid, each with its corners. */
export function DefectFields({ path }: { readonly path: JobPath }) {
  const dispatch = useDispatch();
  const written = useWritten(path);
  const defects = (Array.isArray(written) ? written : []) as readonly (readonly Vec2[])[];
  const put = (next: readonly (readonly Vec2[])[], key?: string): void =>
    dispatch({ type: 'edit', key, patches: [{ path, value: next.length === 0 ? undefined : next }] });
  return (
    <>
      {defects.map((defect, i) => (
        <div
          // biome-ignore lint/suspicious/noArrayIndexKey: a defect has no name but its place in the list
          key={i}
          className="listed"
        >
          <PolygonField
            title={`Defect ${i + 1}`}
            path={`${path}.${i}`}
            polygon={defect}
            put={(polygon) => put(defects.with(i, polygon), `${path}.${i}`)}
          />
          <button type="button" className="quiet" onClick={() => put(defects.toSpliced(i, 1))}>
            Take out<span className="only-heard"> defect {i + 1}</span>
          </button>
        </div>
      ))}
      <button type="button" onClick={() => put([...defects, NEW_DEFECT])}>
        Mark a defect
      </button>
      <p className="help">
        Scars, holes, brands and loose places. No piece comes nearer than the distance off the edge.
      </p>
    </>
  );
}
