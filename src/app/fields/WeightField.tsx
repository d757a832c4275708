import { type LeatherName, valueAt } from '../../core/index.ts';
import { useBench } from '../state/BenchContext.tsx';
import { TypedField } from './TypedField.tsx';

interface WeightFieldProps {
  readonly piece: LeatherName;
  readonly title: string;
}

/** The weight range of one leather, typed as it is sold. */
export function WeightField({ piece, title }: WeightFieldProps) {
  const path = `leather.${piece}` as const;
  const shown = useBench(({ history: { document }, lengths }) => {
    const [min, max] = [valueAt(document, `${path}.min_mm`), valueAt(document, `${path}.max_mm`)];
    return typeof min === 'number' && typeof max === 'number' ? lengths.weights(min, max) : '';
  });
  return (
    <TypedField
      path={path}
      title={title}
      help="As it is sold: 4-5 oz, 4.5 oz or 1.6-2.0 mm. The cut is sized for the thick end."
      shown={shown}
    />
  );
}
