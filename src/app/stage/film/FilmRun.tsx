import { type ReactNode, useEffect, useId, useMemo } from 'react';
import { type FilmFigure, type FilmStep, listed, type RestRange, standsOpen } from '../../../core/index.ts';
import { useBench } from '../../state/BenchContext.tsx';
import { addressOf, usePlace } from '../../state/place.ts';
import type { StageState } from '../stageState.ts';
import { filmStepIn } from './filmAddress.ts';
import { restRange, type Strip } from './restRange.ts';
import { type Film, useFilm } from './useFilm.ts';
import './film.css';

interface FilmRunProps {
  readonly stage: StageState;
  readonly setStage: (change: Partial<StageState>) => void;
}

/** The film of the making: one run over all steps in the order of work, played or moved by hand, and what its step says. */
export default function FilmRun({ stage, setStage }: FilmRunProps) {
  const design = useBench(({ design }) => design);
  const strip = useBench(({ report }) => report.fit[stage.point].strip);
  const isHeld = design.job.construction.strap !== null;
  const rest = useMemo(() => (isHeld ? undefined : restRange(strip)), [strip, isHeld]);
  const film = useFilm(design, stage, rest, setStage);
  const { steps, step, index, at, isPlaying, show, showStep, play } = film;
  const id = useId();
  const isShown = stage.pose.kind === 'sequence';
  const said = isShown ? `step ${index + 1} of ${steps.length}` : 'finished';
  const { part } = usePlace();
  // biome-ignore lint/correctness/useExhaustiveDependencies: an address leads to its step once
  useEffect(() => {
    const asked = steps.findIndex(({ id }) => id === filmStepIn(part));
    if (asked >= 0) showStep(asked);
  }, [part]);

  return (
    <>
      {isShown && <FilmCaption film={film} atRest={<AtRest {...{ strip, rest, isHeld }} />} />}
      <div className="run film-room film-run">
        <button type="button" className="quiet film-play" aria-pressed={isPlaying} onClick={play}>
          <svg viewBox="0 0 16 16" aria-hidden="true">
            <path d={isPlaying ? 'M4 3h3v10H4zM9 3h3v10H9z' : 'M4 2.5v11l9-5.5z'} />
          </svg>
          <span className="only-heard">{isPlaying ? 'Stop the film' : 'Play the film of the making'}</span>
        </button>
        <label htmlFor={id}>Making</label>
        <output htmlFor={id}>{said}</output>
        <input
          id={id}
          type="range"
          min={0}
          max={1}
          step={0.001}
          value={at}
          aria-valuetext={isShown ? `${said}: ${step.name}` : said}
          onChange={(event) => show(event.target.valueAsNumber)}
          onKeyDown={(event) => {
            const asked = { PageUp: index + 1, PageDown: index - 1 }[event.key];
            if (asked !== undefined) showStep(asked);
            else if (event.key === ' ') play();
            else return;
            event.preventDefault();
          }}
        />
        <Ticks steps={steps} index={isShown ? index : steps.length} />
      </div>
    </>
  );
}

/** The steps under the run, as long as they take; decoration for the eye. */
const Ticks = ({ steps, index }: { readonly steps: readonly FilmStep[]; readonly index: number }) => (
  <div className="film-ticks" aria-hidden="true">
    {steps.map(({ id, from, to, jam }, i) => (
      <span
        key={id}
        style={{ flexGrow: to - from }}
        data-now={i === index || undefined}
        data-done={i < index || undefined}
        data-jam={jam !== null || undefined}
      />
    ))}
  </div>
);

/** What the step is about: its figure, what stands in its way, its cautions, and the way to the order of work. */
function FilmCaption({
  film: { steps, step, index, at, showStep },
  atRest,
}: {
  readonly film: Film;
  readonly atRest: ReactNode;
}) {
  const lengths = useBench(({ lengths }) => lengths);
  const print = ({ unit, value }: FilmFigure): string => (unit === 'mm' ? lengths.gap(value) : lengths.angle(value));
  const told = ({ words, ...figure }: FilmFigure): string => `${words} ${print({ words, ...figure } as FilmFigure)}`;
  const stopped = steps.find(({ jam }) => jam !== null && at >= jam.at) ?? null;
  const shown = stopped ?? step;
  return (
    <div className="film-caption">
      <p className="film-step">
        <strong>{shown.name}</strong>
        {shown.figure !== null && <span>{told(shown.figure)}</span>}
        {shown.id === 'rest' && atRest}
        <span className="film-turns">
          <button type="button" className="quiet" disabled={index === 0} onClick={() => showStep(index - 1)}>
            <span aria-hidden="true">‹</span>
            <span className="only-heard">Step before</span>
          </button>
          <button
            type="button"
            className="quiet"
            disabled={index === steps.length - 1}
            onClick={() => showStep(index + 1)}
          >
            <span aria-hidden="true">›</span>
            <span className="only-heard">Step after</span>
          </button>
        </span>
      </p>
      {stopped !== null && (
        <p role="status" className="film-jam">
          It stops here. {stopped.jam!.words} There is: {told(stopped.jam!.has)}. It takes: {told(stopped.jam!.needs)}.
        </p>
      )}
      <p className="film-more">
        {shown.cautions.length > 0 && <span>Take care: {listed(shown.cautions.map(subject))}. </span>}
        <a className="link" href={addressOf('workbench', 'work')}>
          Order of work
        </a>
      </p>
    </div>
  );
}

/** How far the cover that is let go springs open; the outlines in the picture show both ends. */
function AtRest({
  strip,
  rest,
  isHeld,
}: {
  readonly strip: Strip;
  readonly rest: RestRange | undefined;
  readonly isHeld: boolean;
}) {
  const lengths = useBench(({ lengths }) => lengths);
  if (isHeld) return <span>the closure holds it shut</span>;
  if (rest === undefined)
    return (
      <span>{strip ? 'how far it springs open is not known' : 'how far it springs open is being worked out'}</span>
    );
  return (
    <span>it {standsOpen(rest.least, rest.most, lengths.angle)}, by how stiff and how well creased the leather is</span>
  );
}

/** A danger in a few words; it stands in full in the order of work. */
const subject = (caution: string): string => {
  const words = caution.slice(0, caution.search(/[:;.]/));
  return `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
};
