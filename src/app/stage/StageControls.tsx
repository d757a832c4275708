import { lazy, type Ref, useId } from 'react';
import type { RangePoint } from '../../core/index.ts';
import { Choice } from '../fields/Choice.tsx';
import { LatePart } from '../loading/LatePart.tsx';
import { QuietPart } from '../loading/QuietPart.tsx';
import { VIEWPOINTS } from '../scene/viewpoints.ts';
import { useBench } from '../state/BenchContext.tsx';
import { lookFrom, openingWords, type StageState } from './stageState.ts';

const FilmRun = lazy(() => import('./film/FilmRun.tsx'));
const StageTake = lazy(() => import('./StageTake.tsx'));

interface StageControlsProps {
  readonly stage: StageState;
  readonly setStage: (change: Partial<StageState>) => void;
  /** What lies over the picture. */
  readonly overlay: Ref<HTMLDivElement>;
}

const LEATHER_ENDS = [
  { value: 'thin', label: 'thin' },
  { value: 'nominal', label: 'middle' },
  { value: 'thick', label: 'thick' },
];

const AREAS = [
  { value: 'hidden', label: 'hidden' },
  { value: 'shown', label: 'shown' },
];

const CUTS = [
  { value: 'none', label: 'none' },
  { value: 'acrossSpine', label: 'across the spine' },
  { value: 'throughPocket', label: 'through a pocket' },
];

const SHAPES = [
  { value: 'taut', label: 'pulled tight' },
  { value: 'settled', label: 'as it will lie' },
];

const TAUT_NOTE = 'Pushed home: drawn tight over the book, so that the spare wrap shows at the edges.';

/** The strip's own assumptions stand beside its figures in the checks. */
const SETTLED_NOTE =
  'By the springy model, without friction: the spare wrap stands off spine and boards. The book lies on its back board, held down where its weight does not press the leather flat.';

/** Making and opening as two runs, the viewpoints while the picture is in use, and the rest of the view folded. */
export function StageControls({ stage, setStage, overlay }: StageControlsProps) {
  const { pose, slice, viewpoint } = stage;
  const opening = useBench(({ design }) => openingWords(pose, design.fits[stage.point]));
  const degrees = pose.kind === 'opening' ? Math.round((pose.angle * 180) / Math.PI) : 0;
  return (
    <div ref={overlay} className="stage-controls not-printed">
      <fieldset className="row viewpoints" aria-label="Look from">
        {VIEWPOINTS.map((name) => (
          <button
            key={name}
            type="button"
            aria-pressed={name === viewpoint}
            onClick={() => setStage(lookFrom(stage, name))}
          >
            {name}
          </button>
        ))}
      </fieldset>
      <LatePart name="film" room="film-room">
        <FilmRun stage={stage} setStage={setStage} />
      </LatePart>
      <Run
        title="Open the book"
        said={opening}
        max={180}
        step={1}
        value={degrees}
        onChange={(value) => setStage({ pose: { kind: 'opening', angle: (value * Math.PI) / 180 }, film: null })}
      />
      <div className="stage-ends">
        <QuietPart>
          <StageTake stage={stage} />
        </QuietPart>
        <details className="stage-view-choice">
          <summary>View</summary>
          <div className="stage-more">
            <Choice
              title="Show the leather"
              options={SHAPES}
              chosen={stage.shape}
              choose={(shape) => setStage({ shape: shape as StageState['shape'] })}
              notes={[stage.shape === 'taut' ? TAUT_NOTE : SETTLED_NOTE]}
            />
            <Choice
              title="Leather shown"
              options={LEATHER_ENDS}
              chosen={stage.point}
              choose={(point) => setStage({ point: point as RangePoint })}
            />
            <Choice
              title="Tooling areas"
              options={AREAS}
              chosen={stage.showsAreas ? 'shown' : 'hidden'}
              choose={(shown) => setStage({ showsAreas: shown === 'shown' })}
            />
            <Choice
              title="Cross-section"
              options={CUTS}
              chosen={slice?.axis ?? 'none'}
              choose={(axis) =>
                setStage({
                  slice: axis === 'none' ? null : { axis: axis as NonNullable<typeof slice>['axis'], at: 0.5 },
                })
              }
            />
            {slice !== null && (
              <Run
                title="Cut at"
                said={slice.axis === 'acrossSpine' ? 'tail to head' : 'spine to fore-edge'}
                max={1}
                step={0.01}
                value={slice.at}
                onChange={(at) => setStage({ slice: { ...slice, at } })}
              />
            )}
          </div>
        </details>
      </div>
    </div>
  );
}

interface RunProps {
  readonly title: string;
  readonly said: string;
  readonly max: number;
  readonly step: number;
  readonly value: number;
  readonly onChange: (value: number) => void;
}

function Run({ title, said, max, step, value, onChange }: RunProps) {
  const id = useId();
  return (
    <div className="run">
      <label htmlFor={id}>{title}</label>
      <output htmlFor={id}>{said}</output>
      <input
        id={id}
        type="range"
        min={0}
        max={max}
        step={step}
        value={value}
        aria-valuetext={said}
        onChange={(event) => onChange(event.target.valueAsNumber)}
      />
    </div>
  );
}
