import { type Printer, valueAt } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import { TypedField } from './TypedField.tsx';

interface WeightFieldProps {
  readonly piece: 'outside' | 'pocket' | 'lining';
  readonly title: string;
}

/** The weight range of one leather, typed as it is sold. */
export function WeightField({ piece, title }: WeightFieldProps) {
  const path = `leather.${piece}`;
  const shown = useBench(({ history, lengths }) => rangeText(valueAt(history.document, path), lengths));
  return (
    <TypedField
      path={path}
      title={title}
      help="As it is sold: 4-5 oz, 4.5 oz or 1.6-2.0 mm. The cut is sized for the thick end."
      shown={shown}
    />
  );
}

function rangeText(leather: unknown, { weights }: Printer): string {
  const [min, max] = [valueAt(leather, 'min_mm'), valueAt(leather, 'max_mm')];
  return typeof min === 'number' && typeof max === 'number' ? weights(min, max) : '';
}
