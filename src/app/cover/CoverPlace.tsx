import { lazy, useRef, useState } from 'react';
import { firstPaint } from '../loading/firstPaint.ts';
import { LatePart } from '../loading/LatePart.tsx';
import { QuietPart } from '../loading/QuietPart.tsx';
import type { LoupePlace } from '../loupe/Loupe.tsx';
import { Verdict } from '../panel/Verdict.tsx';
import type { Spot } from '../scene/spot.ts';
import { Stage } from '../stage/Stage.tsx';
import type { ZoneChoice } from '../strip/useZoneChoice.ts';
import './cover.css';

const NewCover = lazy(() => import('../form/NewCover.tsx'));
const IssueList = lazy(() => firstPaint.then(() => import('../fields/IssueList.tsx')));
const Cards = lazy(() => firstPaint.then(() => import('./Cards.tsx')));
const ElasticNote = lazy(() => firstPaint.then(() => import('../panel/ElasticNote.tsx')));

interface CoverPlaceProps {
  readonly zones: ZoneChoice;
  /** While the maker is elsewhere the cover stays as it was, out of sight: a scene takes seconds to set up. */
  readonly isAway: boolean;
}

/** The cover on the book with the verdict on it, and beside it what it is made of. */
export function CoverPlace({ zones, isAway }: CoverPlaceProps) {
  const words = useRef<HTMLElement>(null);
  const [spot, light] = useState<Spot | null>(null);
  const [loupe, setLoupe] = useState<LoupePlace | null>(null);
  const [isStarting, setStarting] = useState(false);
  return (
    <div className="cover-place" data-away={isAway || undefined} inert={isAway}>
      <Verdict words={words} start={() => setStarting(true)} />
      <Stage highlight={zones.lit} spot={spot} isAway={isAway} words={words} loupe={loupe} setLoupe={setLoupe} />
      <aside className="cards" aria-label="What it is made of">
        <QuietPart>
          <ElasticNote />
          <IssueList />
        </QuietPart>
        <LatePart name="column of cards">
          <Cards light={light} loupe={loupe} setLoupe={setLoupe} />
        </LatePart>
      </aside>
      {isStarting && (
        <LatePart name="new cover form">
          <NewCover onClose={() => setStarting(false)} />
        </LatePart>
      )}
    </div>
  );
}
