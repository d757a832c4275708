import type { Vec2 } from '../../../core/index.ts';
import { useFieldIssues } from '../../fields/fieldState.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { useDraft } from '../../fields/useDraft.ts';
import { useDispatch, useLengths } from '../../state/BenchContext.tsx';
import { polygonText, readPolygon } from './polygonText.ts';

interface PolygonFieldProps {
  readonly title: string;
  readonly help?: string;
  /** Where the outline's issues are found in the job. */
  readonly path: string;
  readonly polygon: readonly Vec2[];
  readonly put: (polygon: readonly Vec2[]) => void;
}

/** An outline as a list of its corners. */
export function PolygonField({ title, help, path, polygon, put }: PolygonFieldProps) {
  const dispatch = useDispatch();
  const lengths = useLengths();
  const issues = useFieldIssues(path);
  const { text, refused, change } = useDraft(
    polygon,
    (corners) => polygonText(corners, lengths),
    (typed) => readPolygon(typed, lengths.units),
    put,
  );
  return (
    <PlainField
      title={title}
      help={help}
      path={path}
      rows={Math.min(8, Math.max(2, text.split('\n').length))}
      text={text}
      change={change}
      issues={[...(refused === null ? [] : [refused]), ...issues]}
      onBlur={() => dispatch({ type: 'settle' })}
    />
  );
}
