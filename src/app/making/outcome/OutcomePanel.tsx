import { useMemo } from 'react';
import {
  type CoverLesson,
  coverLesson,
  coverSection,
  EDGES,
  type Edge,
  GIVE_OR_TAKE,
  type JobPath,
  outcomeConflict,
} from '../../../core/index.ts';
import { standing } from '../../../output/customerSheet/opensAndRests.ts';
import { fileName } from '../../../output/fileName.ts';
import { today } from '../../../output/today.ts';
import { gapWords } from '../../sheet/gapWords.ts';
import { SectionPicture } from '../../sheet/SectionPicture.tsx';
import { useLengths } from '../../state/BenchContext.tsx';
import type { Bench } from '../../state/bench.ts';
import { placeOf } from '../../state/jobHistory.ts';
import { lagging } from '../../state/lagging.tsx';
import { Panel } from '../PanelParts.tsx';
import { SaveSheet } from '../SaveSheet.tsx';
import { EdgeReading } from '../trial/EdgeReadings.tsx';
import { OutcomeFields } from './OutcomeFields.tsx';
import { Teaching } from './Teaching.tsx';

const PATHS: Readonly<Record<Edge, JobPath>> = {
  frontForeEdge: 'outcome.front_mm',
  backForeEdge: 'outcome.back_mm',
  head: 'outcome.head_mm',
  tail: 'outcome.tail_mm',
};

const CONFLICT = {
  closes:
    'The cover is said to close, but overruns at the fore-edges. Nothing is learned of its width: read both again.',
  open: 'The cover is said to stay open, but has room at the fore-edges. Nothing is learned of its width: read both again.',
} as const;

/** The finished cover: what is read of it, beside what was foretold, and what it teaches. */
function OutcomePanel({
  design,
  settled,
  lessonKey,
}: Pick<Bench, 'design' | 'settled'> & { readonly lessonKey: string }) {
  const lengths = useLengths();
  const { gaps } = design.fitDoubt;
  const conflict = outcomeConflict(design.job);
  const lesson = useMemo(() => coverLesson(design, { job: lessonKey, name: design.job.name }), [design, lessonKey]);
  const foretold = (edge: Edge): string => {
    const { mean, u } = gaps[edge === 'head' || edge === 'tail' ? edge : 'foreEdge'];
    return `Foretold: ${gapWords(mean, lengths)}, give or take ${lengths.small(GIVE_OR_TAKE * u, 1)}.`;
  };
  return (
    <Panel name="How it came out" fields={<OutcomeFields />}>
      <figure className="section-drawing">
        <SectionPicture section={coverSection(design, 'nominal', 0)} label="Section of the book in its cover" />
        <figcaption>The book in its cover, cut across the spine. Below it each edge, enlarged, as foretold.</figcaption>
      </figure>
      <p className="help">
        Close the book in its cover. Type each gap from the board edge to where it stops at the seam. Read the
        fore-edges pushed home: press the cover to spine and boards. Front and back count together, head and tail too.
        If a piece was cut to another size than drawn, type that size in the card Cut sizes first.
      </p>
      <form
        className="job-form edge-readings"
        aria-label="Gaps of the finished cover"
        onSubmit={(event) => event.preventDefault()}
      >
        {EDGES.map((edge) => (
          <EdgeReading
            key={edge}
            design={design}
            edge={edge}
            point="nominal"
            path={PATHS[edge]}
            told={() => foretold(edge)}
          />
        ))}
      </form>
      {conflict !== null && (
        <p role="alert" className="refused">
          {CONFLICT[conflict]}
        </p>
      )}
      <ReadAndForetold lesson={lesson} settled={settled} />
      <Teaching lesson={lesson} taken={design.job.leather.outside.taken} />
      <SaveSheet
        sheet="sheet to write covers on"
        make={async ({ paper }) => {
          const { coversSheetPdf } = await import('../../../output/comparison/coversSheetPdf.ts');
          return coversSheetPdf({ paper, date: today() });
        }}
        nameOf={(paper) => fileName('finished-covers', 'pdf', [paper])}
      />
    </Panel>
  );
}

interface ReadProps extends Pick<Bench, 'settled'> {
  readonly lesson: CoverLesson | null;
}

/** What was read, as the sums in which it counts, beside what was foretold of them. */
function ReadAndForetold({ lesson, settled }: ReadProps) {
  const lengths = useLengths();
  if (lesson === null) return <p>Nothing is read of this cover yet.</p>;
  const { weekLater_deg: week } = lesson;
  const rest = settled && standing(settled, lengths)?.pressedDay;
  return (
    <table>
      <caption>Read, and foretold</caption>
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">read</th>
          <th scope="col">foretold</th>
          <th scope="col">give or take</th>
        </tr>
      </thead>
      <tbody>
        {lesson.evidence.map(({ of, read_mm: read, expected_mm: expected, foretold_mm: u }) => (
          <tr key={of}>
            <th scope="row">{of === 'wrap' ? 'Front and back together' : 'Head and tail together'}</th>
            <td>{gapWords(read, lengths)}</td>
            <td>{gapWords(expected, lengths)}</td>
            <td>{lengths.small(GIVE_OR_TAKE * u, 1)}</td>
          </tr>
        ))}
        {lesson.strain !== null && (
          <tr>
            <th scope="row">Grain at the folds</th>
            <td>{lesson.cracked === true ? 'cracked' : 'whole'}</td>
            <td colSpan={2}>stretched by {lengths.share(lesson.strain)}</td>
          </tr>
        )}
        {week !== null && (
          <tr>
            <th scope="row">A week later</th>
            <td>{lengths.degrees(week, 'nearest')} open</td>
            <td colSpan={2}>{rest ?? 'not worked out'}</td>
          </tr>
        )}
      </tbody>
    </table>
  );
}

export default lagging(
  ({ design, settled, history }: Bench) => ({
    design,
    settled,
    lessonKey: placeOf(history)?.id ?? history.key,
  }),
  OutcomePanel,
);
