import { useMemo, useState } from 'react';
import { type Contradiction, type CoverLesson, coverTeaching, type Job, openLeather } from '../../../core/index.ts';
import { fitRows, handRows, type KnownRow } from '../../shelf/knownRows.ts';
import { missing, type ShelfTrouble } from '../../shelf/shelfTrouble.ts';
import { TroubleNote } from '../../shelf/TroubleNote.tsx';
import { theLeathers } from '../../shelf/theLeathers.ts';
import { type ShelvedLeather, useOpenLeathers } from '../../shelf/useOpenLeathers.ts';
import { useLengths } from '../../state/BenchContext.tsx';

interface TeachingProps {
  /** Null where nothing was read. */
  readonly lesson: CoverLesson | null;
  /** The leather of the maker's own that the outside was made of. */
  readonly taken: Job['leather']['outside']['taken'];
}

/** What the finished cover teaches of its leather and of the maker's hand, and a button that lets it. */
export function Teaching({ lesson, taken }: TeachingProps) {
  const { leathers, trouble, refresh } = useOpenLeathers(taken?.id);
  const found = leathers?.find(({ record }) => record.id === taken?.id);
  return (
    <section className="lesson" aria-labelledby="teaches">
      <h3 id="teaches">What this teaches</h3>
      <TroubleNote trouble={trouble} />
      {lesson === null && (
        <p>Type how the cover came out. Then it says what that teaches of the leather and of your hand.</p>
      )}
      {lesson !== null && taken === null && (
        <p>
          This job’s leather is not from your leathers, so nothing can be kept of it. Put it there, or take one, in the
          Leather card under “Your leathers”.
        </p>
      )}
      {lesson !== null && taken !== null && leathers !== null && found === undefined && (
        <p>“{taken.name}” no longer stands among your leathers. Put it back there, and this cover can teach it.</p>
      )}
      {lesson !== null && leathers !== null && found !== undefined && (
        <Lesson lesson={lesson} leathers={leathers} of={found} refresh={refresh} />
      )}
    </section>
  );
}

interface LessonProps {
  readonly lesson: CoverLesson;
  readonly leathers: readonly ShelvedLeather[];
  readonly of: ShelvedLeather;
  /** Reads the leathers again. */
  readonly refresh: () => Promise<void>;
}

function Lesson({ lesson, leathers, of, refresh }: LessonProps) {
  const lengths = useLengths();
  const [trouble, setTrouble] = useState<ShelfTrouble | null>(null);
  const { record, leather } = of;
  const teaching = useMemo(
    () =>
      coverTeaching(
        leathers.map((each) => each.leather),
        leather,
        lesson,
      ),
    [leathers, leather, lesson],
  );
  const kept = leather.covers.find(({ job }) => job === lesson.job);
  const isKept = JSON.stringify(kept) === JSON.stringify(lesson);
  /** Puts the lesson into the leather as it stands by now, or takes it out: another window, or its page, may have saved it meanwhile. */
  const save = async (taught: readonly CoverLesson[]): Promise<void> => {
    const newest = await theLeathers.get(record.id);
    const opened = newest.ok ? openLeather(newest.value.document) : null;
    if (!newest.ok || !opened?.ok) return setTrouble(newest.ok ? missing('leather') : newest.trouble);
    const covers = [...opened.document.covers.filter(({ job }) => job !== lesson.job), ...taught];
    const saved = await theLeathers.save(record.id, newest.value.revision, { ...opened.document, covers });
    setTrouble(saved.ok ? null : saved.trouble);
    await refresh();
  };
  const rows = (told: typeof teaching.before): readonly KnownRow[] => [
    ...fitRows(told.leather, lengths),
    ...handRows(told.hand, lengths),
  ];
  const before = rows(teaching.before);
  const told = rows(teaching.after).flatMap((after, i) => {
    const was = before[i];
    return was === undefined || (was.value === after.value && was.giveOrTake === after.giveOrTake)
      ? []
      : [{ was, after }];
  });
  return (
    <>
      {teaching.contradictions.map((each) => (
        <p key={each.of} role="alert" className="refused">
          {contradictionWords(each)}
        </p>
      ))}
      {told.length > 0 && (
        <table>
          <caption>{record.name}</caption>
          <thead>
            <tr>
              <th scope="col">Figure</th>
              <th scope="col">without this cover</th>
              <th scope="col">with it</th>
            </tr>
          </thead>
          <tbody>
            {told.map(({ was, after }) => (
              <tr key={after.name}>
                <th scope="row">{after.name}</th>
                <td>{figure(was)}</td>
                <td>{figure(after)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {told.length === 0 && lesson.evidence.length > 0 && <p>It changes no figure by as much as is shown.</p>}
      {lesson.evidence.length === 0 && (
        <p>No gap is read, so it changes no figure of the fit. The rest is kept with the leather.</p>
      )}
      <p className="help">
        Give or take: 19 in 20 are no further off. Nothing here changes by itself: a job takes newer figures of its
        leather only when you tell it to.
      </p>
      <TroubleNote trouble={trouble} />
      <p className="remedy">
        {!isKept && (
          <button type="button" className="main" onClick={() => void save([lesson])}>
            {kept === undefined ? `Let it teach ${record.name}` : `Teach ${record.name} what is typed now`}
          </button>
        )}{' '}
        {kept !== undefined && (
          <>
            {isKept && <span role="status">{record.name} has learned from this cover. </span>}
            <button type="button" onClick={() => void save([])}>
              Take this cover out again
            </button>
          </>
        )}
      </p>
    </>
  );
}

const figure = ({ value, giveOrTake }: KnownRow): string => `${value} ± ${giveOrTake}`;

/** That a reading cannot be right, and what to do. */
const contradictionWords = ({ of, deviation }: Contradiction): string =>
  `${of === 'wrap' ? 'Front and back' : 'Head and tail'} came out ${Math.abs(deviation).toFixed(1)} times as far from what was foretold as ` +
  'errors explain: nothing is learned from it. Read it again, and check the sizes that were cut and the measures of the book.';
