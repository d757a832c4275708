import { lazy } from 'react';
import { Card } from '../fields/Card.tsx';
import { LatePart } from '../loading/LatePart.tsx';
import { LookAtEdges } from '../loupe/LookAtEdges.tsx';
import type { LoupePlace } from '../loupe/Loupe.tsx';
import { Checks } from '../panel/Checks.tsx';
import { bookSentence, cutSentence, leatherSentence, seamSentence } from '../panel/jobSentences.tsx';
import type { Spot } from '../scene/spot.ts';
import { useBench } from '../state/BenchContext.tsx';
import { useNarrow } from '../state/useNarrow.ts';

const form = () => import('../form/cardFields.ts');
const BookFields = lazy(() => form().then(({ BookFields }) => ({ default: BookFields })));
const LeatherCard = lazy(() => form().then(({ LeatherCard }) => ({ default: LeatherCard })));
const SeamFields = lazy(() => form().then(({ SeamFields }) => ({ default: SeamFields })));
const PatternFields = lazy(() => form().then(({ PatternFields }) => ({ default: PatternFields })));
const DoubtFields = lazy(() => form().then(({ DoubtFields }) => ({ default: DoubtFields })));
const CutSizes = lazy(() => import('../panel/CutSizes.tsx'));
const HowSure = lazy(() => import('../panel/HowSure.tsx'));

interface CardsProps {
  readonly light: (spot: Spot | null) => void;
  readonly loupe: LoupePlace | null;
  readonly setLoupe: (place: LoupePlace | null) => void;
}

/** The job in a few sentences, each of which unfolds to its fields; and what follows from it. */
export default function Cards({ light, loupe, setLoupe }: CardsProps) {
  const { design, lengths } = useBench(({ design, lengths }) => ({ design, lengths }));
  const isNarrow = useNarrow();
  const { job } = design;
  return (
    <form aria-label="The job in figures" onSubmit={(event) => event.preventDefault()}>
      <Card id="book" title="Book" said={bookSentence(job, lengths)} startsOpen={isNarrow}>
        {isNarrow ? (
          // It starts unfolded there, so all cards wait for it, lest those below it move when it comes.
          <BookFields />
        ) : (
          <LatePart name="card “Book”">
            <BookFields />
          </LatePart>
        )}
      </Card>
      <Card id="leather" title="Leather" said={leatherSentence(job, lengths)}>
        <LatePart name="card “Leather”">
          <LeatherCard />
        </LatePart>
      </Card>
      <Card id="seam" title="Seam and pockets" said={seamSentence(job, lengths)}>
        <LatePart name="card “Seam and pockets”">
          <SeamFields />
        </LatePart>
      </Card>
      <LookAtEdges loupe={loupe} setLoupe={setLoupe} showsLoupe={isNarrow} />
      <Card id="cut" title="Cut" said={cutSentence(design, lengths)}>
        <LatePart name="card “Cut”">
          <CutSizes />
          <PatternFields />
        </LatePart>
      </Card>
      <Checks light={light} />
      <Card id="sure" title="How sure" said={sureWords(design.doubt.inputs.length)} act="show">
        <LatePart name="part “How sure”">
          <HowSure />
          <DoubtFields />
        </LatePart>
      </Card>
    </form>
  );
}

const sureWords = (inputs: number): string =>
  `Chances hold if the doubts assumed of ${inputs} figures are right. See which matter, and what to measure next.`;
