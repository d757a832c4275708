import { valueAt } from '../../core/job/jobDocument.ts';
import { MM_PER_OUNCE } from '../../core/units/leatherWeight.ts';
import { useBench } from '../state/BenchContext.tsx';
import { TypedField } from './TypedField.tsx';

interface WeightFieldProps {
  readonly piece: 'outside' | 'pocket' | 'lining';
  readonly title: string;
}

/** The weight range of one leather, typed as it is sold. */
export function WeightField({ piece, title }: WeightFieldProps) {
  const { history, view } = useBench();
  const path = `leather.${piece}`;
  return (
    <TypedField
      path={path}
      title={title}
      help="As it is sold: 4-5 oz, 4.5 oz or 1.6-2.0 mm. The cut is sized for the thick end."
      shown={rangeText(valueAt(history.document, path), view.units)}
    />
  );
}

/** Ounces go with inches. A range that is no quarter ounce is shown in mm, for ounces would misstate it. */
function rangeText(leather: unknown, units: 'mm' | 'in'): string {
  const ends = [valueAt(leather, 'min_mm'), valueAt(leather, 'max_mm')];
  if (!ends.every((end) => typeof end === 'number')) return '';
  const quarters = ends.map((end) => (end / MM_PER_OUNCE) * 4);
  const areQuarters = quarters.every((count) => Math.abs(count - Math.round(count)) < 1e-6);
  const isInOunces = units === 'in' && areQuarters;
  const figures = isInOunces
    ? quarters.map((count) => String(Math.round(count) / 4))
    : ends.map((end) => String(Number(end.toFixed(2))));
  return `${[...new Set(figures)].join('-')} ${isInOunces ? 'oz' : 'mm'}`;
}
