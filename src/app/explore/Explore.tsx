import { useId, useMemo } from 'react';
import { useStore } from 'zustand/react';
import { exploreFields, isWanting } from '../../core/index.ts';
import { type Bench, trialsOf } from '../state/bench.ts';
import { lagging } from '../state/lagging.tsx';
import { CurveChart } from './CurveChart.tsx';
import { CurveReader } from './CurveReader.tsx';
import { CurveTable } from './CurveTable.tsx';
import { ExploreQuestion } from './ExploreQuestion.tsx';
import { ExploreTools } from './ExploreTools.tsx';
import { exploreChoice, FIRST_FIELD } from './exploreChoice.ts';
import { overlaysFor } from './overlays.ts';
import { sweepRange } from './sweepRange.ts';
import { Trials } from './Trials.tsx';
import { useExplored } from './useExplored.ts';
import { WhatMustChange } from './WhatMustChange.tsx';
import './explore.css';

const needs = (bench: Bench) => ({
  document: bench.history.good.document,
  design: bench.design,
  report: bench.report,
  trials: trialsOf(bench),
  trialsFailure: bench.trialsFailure,
});

/** How one field changes one result, what must change for the cover to fit, and how often it fits by trials. */
function Explore({ document, design, report, trials, trialsFailure }: ReturnType<typeof needs>) {
  const id = useId();
  const { fieldId, resultId, zoom, reading, pinned, overlayId, target: chosenTarget } = useStore(exploreChoice);
  const choose = exploreChoice.setState;

  const fields = useMemo(() => exploreFields(document, design), [document, design]);
  // The chosen field disappears with its leather, and the chosen check may fit by now.
  const field = fields.find((each) => each.id === fieldId) ?? fields.find((each) => each.id === FIRST_FIELD)!;
  const target = report.checks.some((each) => each.id === chosenTarget && isWanting(each.verdict))
    ? chosenTarget
    : 'all';
  const overlays = useMemo(() => overlaysFor(document, pinned), [document, pinned]);
  const overlay = overlays.find((each) => each.id === overlayId) ?? null;

  const explored = useExplored({
    curve: useMemo(
      () => ({
        kind: 'curve',
        document,
        overlay: overlay?.document ?? null,
        fieldId: field.id,
        resultId,
        range: sweepRange(field, zoom),
      }),
      [document, overlay, field, resultId, zoom],
    ),
    changes: useMemo(() => ({ kind: 'changes', document, target }), [document, target]),
  });
  const read = (at: number): void => choose({ reading: at });
  const { curve, failures } = explored;
  const points = curve?.answer.curve.points ?? [];
  const wanted = reading ?? curve?.answer.curve.field.present ?? 0;
  const index = points.reduce(
    (best, { at }, i) => (Math.abs(at - wanted) < Math.abs(points[best]!.at - wanted) ? i : best),
    0,
  );
  const overlayName = overlay?.name ?? '';

  return (
    <section className="explore not-printed" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`} className="only-heard">
        Explore
      </h2>
      {[...new Set([...Object.values(failures), trialsFailure ?? undefined])].map(
        (why) =>
          why !== undefined && (
            <p key={why} role="alert" className="refused">
              Part of this could not be worked out: {why}. Change a field and it is tried again; the rest of the page
              does not need it.
            </p>
          ),
      )}
      <ExploreQuestion
        fields={fields}
        fieldId={field.id}
        resultId={resultId}
        onField={(chosen) => choose({ fieldId: chosen, reading: null, zoom: 1 })}
        onResult={(chosen) => choose({ resultId: chosen })}
      />
      <p className="help">
        How much ease is enough?{' '}
        <button
          type="button"
          className="quiet"
          onClick={() => choose({ fieldId: 'ease.foreEdge_mm', resultId: 'chanceCloses', reading: null, zoom: 1 })}
        >
          Ease against covers that close
        </button>
      </p>
      {curve === null ? (
        <p className="help explore-wait">
          {failures.curve === undefined ? 'The curve is being worked out.' : 'No curve was worked out.'}
        </p>
      ) : (
        <figure>
          <CurveChart answered={curve} overlayName={overlayName} reading={points[index]?.at ?? 0} onRead={read} />
          <CurveReader answered={curve} index={index} field={field} onRead={read} />
          {overlay !== null && curve.answer.overlay === null && curve.question.overlay === overlay.document && (
            <p className="help">The job laid over has no such figure to move.</p>
          )}
        </figure>
      )}
      <ExploreTools
        overlays={overlays}
        overlayId={overlay?.id ?? 'none'}
        zoom={zoom}
        onOverlay={(chosen) => choose({ overlayId: chosen })}
        onZoom={(wanted) => choose({ zoom: wanted })}
        onPin={() => choose({ pinned: document, overlayId: 'pinned' })}
      />
      {curve !== null && <CurveTable answered={curve} overlayName={overlayName} />}
      <div className="explore-aside">
        <WhatMustChange
          document={document}
          checks={report.checks}
          isFailed={failures.changes !== undefined}
          answered={explored.changes}
          target={target}
          onTarget={(wanted) => choose({ target: wanted })}
        />
        <Trials isFailed={trialsFailure !== null} trials={trials} />
      </div>
    </section>
  );
}

export default lagging(needs, Explore);
