import type { JobPath, StripSegment } from '../../core/index.ts';
import { FigureField } from '../fields/FigureField.tsx';
import { WithTerm } from '../fields/Term.tsx';
import { useBench } from '../state/BenchContext.tsx';
import { segmentWords, sideOf, tunedBy } from './segmentWords.ts';

const EMPTY: Readonly<Partial<Record<JobPath, 'required' | 'decided'>>> = {
  'book.width_mm': 'required',
  'book.height_mm': 'required',
  'book.thickness_mm': 'required',
  'pockets.depth_mm': 'decided',
  'pattern.outsideWidth_mm': 'decided',
  'pattern.outsideHeight_mm': 'decided',
};

/** What a chosen stretch is, with the field that changes it most directly. */
export function Tuner({ segment }: { readonly segment: StripSegment }) {
  const design = useBench(({ design }) => design);
  const path = tunedBy(segment, design.job);
  const { name, note } = segmentWords(segment);
  const { outside, pocketDepth } = design.pieces;
  const decided: Readonly<Partial<Record<JobPath, number>>> = {
    'pockets.depth_mm': pocketDepth,
    'pattern.outsideWidth_mm': outside.width,
    'pattern.outsideHeight_mm': outside.height,
  };
  return (
    <div className="tuner not-printed">
      <p>
        <b>
          {sideOf(segment.id)} <WithTerm text={name} />
        </b>{' '}
        {note}
      </p>
      {path !== null && (
        <FigureField
          path={path}
          empty={EMPTY[path] ?? 'default'}
          {...(decided[path] !== undefined && { decided: decided[path] })}
        />
      )}
    </div>
  );
}
