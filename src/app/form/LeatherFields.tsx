import { lazy } from 'react';
import type { JobPath, LeatherName } from '../../core/index.ts';
import { Assumptions } from '../fields/Assumptions.tsx';
import { Choice } from '../fields/Choice.tsx';
import { FigureField } from '../fields/FigureField.tsx';
import { useWritten } from '../fields/fieldState.ts';
import { WeightField } from '../fields/WeightField.tsx';
import { LatePart } from '../loading/LatePart.tsx';
import { useBench, useDispatch } from '../state/BenchContext.tsx';
import { Calibrate } from './Calibrate.tsx';
import { OwnLeatherHead } from './OwnLeatherHead.tsx';
import { Temper } from './Temper.tsx';

const OwnLeather = lazy(() => import('./OwnLeather.tsx'));

/** A thin lining as a first value to type over. Common practice, no source. */
const USUAL_LINING = { min_mm: 0.6, max_mm: 0.8 };

const POCKET_LEATHERS = [
  { value: 'same', label: 'as the outside' },
  { value: 'own', label: 'another' },
];

const LININGS = [
  { value: 'none', label: 'none' },
  { value: 'lined', label: 'lined' },
];

export function LeatherFields() {
  const dispatch = useDispatch();
  const hasPocket = useWritten('leather.pocket') !== undefined;
  const isLined = (useWritten('leather.lining') ?? null) !== null;
  const { min_mm, max_mm } = useBench(({ history }) => history.good.job.leather.outside);
  const put = (path: JobPath, value: unknown): void => dispatch({ type: 'edit', patches: [{ path, value }] });
  return (
    <section aria-label="Leather">
      <div className="field-group">
        <Own piece="outside" name="Outside" />
        <WeightField piece="outside" title="Outside weight" />
        <Temper piece="outside" name="Outside" />
        <FigureField path="leather.outside.foldThickness_mm" empty="unmeasured" title="Outside skived to" />
      </div>
      <div className="field-group">
        <Choice
          title="Pocket leather"
          options={POCKET_LEATHERS}
          chosen={hasPocket ? 'own' : 'same'}
          choose={(value) => put('leather.pocket', value === 'own' ? { min_mm, max_mm } : undefined)}
        />
        {hasPocket && (
          <>
            <Own piece="pocket" name="Pocket" />
            <WeightField piece="pocket" title="Pocket weight" />
            <Temper piece="pocket" name="Pocket" />
          </>
        )}
      </div>
      <div className="field-group">
        <Choice
          title="Centre lining"
          options={LININGS}
          chosen={isLined ? 'lined' : 'none'}
          choose={(value) => put('leather.lining', value === 'lined' ? USUAL_LINING : undefined)}
        />
        {isLined && (
          <>
            <Own piece="lining" name="Lining" />
            <WeightField piece="lining" title="Lining weight" />
            <Temper piece="lining" name="Lining" />
            <FigureField path="leather.lining.foldThickness_mm" empty="unmeasured" title="Lining skived to" />
          </>
        )}
      </div>
      <div className="field-group">
        <LeatherAssumptions piece="outside" title="Assumed of the outside leather" />
        {hasPocket && <LeatherAssumptions piece="pocket" title="Assumed of the pocket leather" />}
        {isLined && <LeatherAssumptions piece="lining" title="Assumed of the lining" />}
      </div>
    </section>
  );
}

function Own({ piece, name }: { readonly piece: LeatherName; readonly name: string }) {
  const taken = useBench(({ history }) => history.good.job.leather[piece]?.taken?.name ?? null);
  const head = <OwnLeatherHead name={name} taken={taken} mayKeep={piece === 'outside'} />;
  return (
    <LatePart name="list of your leathers" instead={<section className="own-leather">{head}</section>}>
      <OwnLeather piece={piece} name={name} />
    </LatePart>
  );
}

function LeatherAssumptions({ piece, title }: { readonly piece: LeatherName; readonly title: string }) {
  return (
    <Assumptions title={title}>
      <Calibrate piece={piece} />
      <FigureField path={`leather.${piece}.neutral`} empty="default" />
      <FigureField path={`leather.${piece}.bendRatio`} empty="default" />
      {piece === 'outside' && <FigureField path="leather.outside.strainLimit" empty="unmeasured" />}
      <FigureField path={`leather.${piece}.modulus_MPa`} empty="default" />
      <FigureField path={`leather.${piece}.creaseSet`} empty="default" />
      <FigureField path={`leather.${piece}.density_kg_m3`} empty="default" />
      {piece !== 'pocket' && <FigureField path={`leather.${piece}.friction`} empty="default" />}
    </Assumptions>
  );
}
