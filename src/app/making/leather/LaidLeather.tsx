import { type LeatherName, polygonArea } from '../../../core/index.ts';
import type { LayoutQuestion } from '../../../output/layout/layoutQuestions.ts';
import { useLengths } from '../../state/BenchContext.tsx';
import { Notes } from '../PanelParts.tsx';
import { LayoutDrawing } from './LayoutDrawing.tsx';
import { LayoutFiles } from './LayoutFiles.tsx';
import { LEATHER_TITLES } from './leatherTitles.ts';
import { useLayout } from './useLayout.ts';

interface LaidLeatherProps {
  readonly leather: LeatherName;
  readonly question: LayoutQuestion;
  /** Whether the leather is the maker's own, and not assumed. */
  readonly isOwned: boolean;
}

/** The pieces of one leather laid on the leather owned, with the area used and any faults. */
export function LaidLeather({ leather, question, isOwned }: LaidLeatherProps) {
  const title = LEATHER_TITLES[leather];
  const { status, last, why } = useLayout(question);
  return (
    <section className="laid" aria-label={`${title}, laid out`} aria-busy={status === 'laying'}>
      <h3>{title}</h3>
      <p role="status" className="help">
        {status === 'laying' &&
          (last === null ? 'The pieces are being laid out.' : 'The pieces are being laid out again.')}
        {status === 'failed' &&
          `The pieces could not be laid out: ${why}. ${last === null ? '' : 'The last layout that could be made is shown. '}Sizes and template do not need it. Change the leather or the pieces, or reload the page; the job is kept.`}
      </p>
      {last !== null && <Outcome title={title} laid={last} />}
      {last !== null && last.layout.placed.length > 0 && (
        <LayoutFiles leather={leather} laid={last} isOwned={isOwned} isBusy={status === 'laying'} />
      )}
    </section>
  );
}

function Outcome({
  title,
  laid,
}: {
  readonly title: string;
  readonly laid: NonNullable<ReturnType<typeof useLayout>['last']>;
}) {
  const lengths = useLengths();
  const { layout, faults, question } = laid;
  const { placed, unplaced, area, used } = layout;
  const counts = new Map<string, number>();
  for (const name of unplaced) counts.set(name, (counts.get(name) ?? 0) + 1);
  const missing = [...counts].map(([name, count]) =>
    count === 1 ? name.toLowerCase() : `${name.toLowerCase()}, ${count} times`,
  );
  const yielded = `${lengths.area(area)} of pieces on ${lengths.area(used)} of leather: yield ${lengths.share(layout.yield)}`;
  return (
    <>
      {missing.length > 0 && (
        <p className="caution" role="alert">
          No place was found for: {missing.join('; ')}. Take a larger piece of leather, or lay pieces closer.
        </p>
      )}
      {placed.length > 0 && <p>{yielded}.</p>}
      <LayoutDrawing
        laid={laid}
        describe={`${title} to scale: ${placed.length === 0 ? 'no piece laid' : placed.map(({ name }) => name.toLowerCase()).join(', ')}. ${placed.length > 0 ? yielded : ''}`}
      />
      {faults.length > 0 ? (
        <Notes notes={faults} />
      ) : (
        <p className="help">
          Arrows: from tail to head. Checked: pieces keep their spacing, their distance from edges and defects, and
          their direction. The leather is {lengths.area(polygonArea(question.hide.outline))} in all.
        </p>
      )}
    </>
  );
}
