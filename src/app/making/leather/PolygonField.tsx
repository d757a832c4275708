import type { Vec2 } from '../../../core/index.ts';
import { PlainField } from '../../fields/PlainField.tsx';
import { useDraft } from '../../fields/useDraft.ts';
import { useLengths } from '../../state/BenchContext.tsx';
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
  const lengths = useLengths();
  const { text, issues, change } = useDraft(
    path,
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
      issues={issues}
    />
  );
}
