import { useEffect, useMemo, useState } from 'react';
import { customerSheet } from '../../output/customerSheet/customerSheet.ts';
import { readCustomerFragment, type SentCover } from '../../output/shareLink/customerLink.ts';
import { shareFragment } from '../../output/shareLink/shareLink.ts';
import { issueLine } from '../fields/issueWords.ts';
import { MakingNote } from '../making/MakingNote.tsx';
import { useMaking } from '../making/useMaking.ts';
import { useReducedMotion } from '../scene/camera/useReducedMotion.ts';
import { BenchContext, useBench } from '../state/BenchContext.tsx';
import { createBench } from '../state/bench.ts';
import { startHistory } from '../state/jobHistory.ts';
import { addressOf } from '../state/place.ts';
import { solveElastic } from '../state/solveElastic.ts';
import { CustomerPage } from './CustomerPage.tsx';
import { OnTheTable } from './OnTheTable.tsx';
import { PaperButtons, TurnButton } from './SheetTools.tsx';
import { useCoverPictures } from './useCoverPictures.ts';

/** The page of a link that a maker has sent: to be read, and left for the workshop. The job of this browser stays as it is. */
export function SentView({ fragment }: { readonly fragment: string }) {
  const read = useMemo(() => readCustomerFragment(fragment), [fragment]);
  if (!read.ok)
    return (
      <main className="customer-sheet">
        <h1>This link cannot be shown</h1>
        <ul role="alert">
          {read.issues.map((issue) => (
            <li key={`${issue.path} ${issue.message}`}>{issueLine(issue)}</li>
          ))}
        </ul>
        <p>
          <a className="link" href={addressOf('cover')}>
            Open the workshop
          </a>
        </p>
      </main>
    );
  return <SentBench sent={read} />;
}

/** Gives the cover that was sent a bench of its own, which is not kept. */
function SentBench({ sent }: { readonly sent: SentCover }) {
  const [bench] = useState(() => createBench(startHistory({ document: sent.document, typed: {} }, sent.document)));
  useEffect(() => solveElastic(bench), [bench]);
  return (
    <BenchContext value={bench}>
      <SentPage sent={sent} />
    </BenchContext>
  );
}

function SentPage({ sent: { offer, document } }: { readonly sent: SentCover }) {
  const { design, report, units } = useBench(({ design, report, lengths }) => ({
    design,
    report,
    units: lengths.units,
  }));
  const sheet = useMemo(() => customerSheet(design, report, offer), [design, report, offer]);
  const [isTurning, setTurning] = useState(!useReducedMotion());
  const pictures = useCoverPictures();
  const shown = { sheet, mark: null, units, ...pictures };
  const [making, make] = useMaking();
  return (
    <>
      <header className="row customer-tools not-printed">
        <TurnButton isTurning={isTurning} setTurning={setTurning} />
        <PaperButtons shown={shown} make={make} />
        <OnTheTable />
        <a className="link" href={shareFragment(document) ?? addressOf('cover')}>
          Open in the workshop
        </a>
        <MakingNote making={making} />
      </header>
      <CustomerPage sheet={sheet} mark={null} isTurning={isTurning} {...pictures} />
    </>
  );
}
