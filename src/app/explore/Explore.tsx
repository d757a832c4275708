import { useId, useMemo, useState } from 'react';
import { exploreFields, type FitTarget, isWanting, type JobDocument } from '../../core/index.ts';
import { type Bench, trialsOf } from '../state/bench.ts';
import { lagging } from '../state/lagging.tsx';
import { CurveChart } from './CurveChart.tsx';
import { CurveReader } from './CurveReader.tsx';
import { CurveTable } from './CurveTable.tsx';
import { ExplorePickers } from './ExplorePickers.tsx';
import { overlaysFor } from './overlays.ts';
import { sweepRange } from './sweepRange.ts';
import { Trials } from './Trials.tsx';
import { useExplored } from './useExplored.ts';
import { WhatMustChange } from './WhatMustChange.tsx';
import './explore.css';

/** The first question shown: how much more a heavier leather needs. */
const FIRST_FIELD = 'leather.outside';
const FIRST_RESULT = 'foreEdgeAllowance';

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
  const [chosenField, setField] = useState(FIRST_FIELD);
  const [resultId, setResult] = useState(FIRST_RESULT);
  const [zoom, setZoom] = useState(1);
  const [reading, setReading] = useState<number | null>(null);
  const [pinned, setPinned] = useState<JobDocument | null>(null);
  const [overlayId, setOverlay] = useState('none');
  const [chosenTarget, setTarget] = useState<FitTarget>('all');

  const fields = useMemo(() => exploreFields(document, design), [document, design]);
  // The chosen field disappears with its leather, and the chosen check may fit by now.
  const field = fields.find((each) => each.id === chosenField) ?? fields.find((each) => each.id === FIRST_FIELD)!;
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
      <h2 id={`${id}-title`}>Explore</h2>
      {[...new Set([...Object.values(failures), trialsFailure ?? undefined])].map(
        (why) =>
          why !== undefined && (
            <p key={why} role="alert" className="refused">
              Part of this could not be worked out: {why}. Change a field and it is tried again; the rest of the page
              does not need it.
            </p>
          ),
      )}
      <div className="explore-sheets">
        <div>
          <ExplorePickers
            fields={fields}
            fieldId={field.id}
            resultId={resultId}
            overlays={overlays}
            overlayId={overlay?.id ?? 'none'}
            zoom={zoom}
            onField={(chosen) => {
              setField(chosen);
              setReading(null);
              setZoom(1);
            }}
            onResult={setResult}
            onOverlay={setOverlay}
            onZoom={setZoom}
            onPin={() => {
              setPinned(document);
              setOverlay('pinned');
            }}
          />
          <p className="help">
            How much ease is enough?{' '}
            <button
              type="button"
              className="quiet"
              onClick={() => {
                setField('ease.foreEdge_mm');
                setResult('chanceCloses');
                setReading(null);
                setZoom(1);
              }}
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
              <CurveChart
                answered={curve}
                overlayName={overlayName}
                reading={points[index]?.at ?? 0}
                onRead={setReading}
              />
              <CurveReader answered={curve} index={index} field={field} onRead={setReading} />
              {overlay !== null && curve.answer.overlay === null && curve.question.overlay === overlay.document && (
                <p className="help">The job laid over has no such figure to move.</p>
              )}
              <CurveTable answered={curve} overlayName={overlayName} />
            </figure>
          )}
        </div>
        <div className="explore-aside">
          <WhatMustChange
            document={document}
            checks={report.checks}
            isFailed={failures.changes !== undefined}
            answered={explored.changes}
            target={target}
            onTarget={setTarget}
          />
          <Trials isFailed={trialsFailure !== null} trials={trials} />
        </div>
      </div>
    </section>
  );
}

export default lagging(needs, Explore);
