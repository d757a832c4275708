import { useSyncExternalStore } from 'react';
import { type CoverDesign, type Drawing, type Layer, patternDrawing } from '../../../../core/index.ts';
import type { WorkCard } from '../../../../output/benchSheet/orderOfWork.ts';
import { PatternSheet } from '../../../sheet/PatternSheet.tsx';
import { useTooledPattern } from '../../../sheet/useTooledPattern.ts';
import { cardOf } from '../../cardOf.ts';
import { remembered } from '../../remembered.ts';
import { AssembledPicture } from './AssembledPicture.tsx';
import { BookPicture } from './BookPicture.tsx';
import { LoadPicture } from './LoadPicture.tsx';
import { SeamPicture } from './SeamPicture.tsx';
import { WrapPicture } from './WrapPicture.tsx';
import './picture.css';

interface StepPictureProps {
  readonly step: Pick<WorkCard, 'id' | 'name'>;
  readonly design: CoverDesign;
  /** Height that a pattern has at most, px; where left out, what the buttons under it leave. */
  readonly highest?: number;
}

/** Height of the lettering of a pattern, px: read from a step away. */
const LETTERING = 13;

const drawingOf = remembered(patternDrawing);

/** What one step looks like, drawn to scale from the design. */
export function StepPicture({ step, ...how }: StepPictureProps) {
  return (
    <div className="step-picture" data-step={step.id}>
      {pictureOf(step, how)}
    </div>
  );
}

function pictureOf({ id }: StepPictureProps['step'], { design, highest }: Omit<StepPictureProps, 'step'>) {
  const pattern = (...layers: Layer[]) => <Pattern drawing={drawingOf(design)} layers={layers} highest={highest} />;
  switch (id) {
    case 'measure':
      return <BookPicture design={design} />;
    case 'mockup':
      return <WrapPicture design={cardOf(design.job)} label="Card on the closed book, cut across the spine" />;
    case 'cut':
    case 'case':
    case 'dry':
    case 'dye':
    case 'dress':
      return pattern('cut', 'direction');
    case 'trace':
    case 'tool':
      return <TooledPattern design={design} highest={highest} />;
    case 'edges':
      return pattern('cut', 'fold', 'skive');
    case 'punch':
      return pattern('cut', 'hole');
    case 'fittings':
      return pattern('cut', 'hole', 'mark', 'fold');
    case 'line':
    case 'cement':
    case 'assemble':
      return (
        <AssembledPicture drawing={drawingOf(design)} design={design} label="Pockets laid on, seen from the inside" />
      );
    case 'stitch':
    case 'lace':
      return <SeamPicture drawing={drawingOf(design)} design={design} />;
    case 'finish':
      return <AssembledPicture drawing={drawingOf(design)} design={design} label="The finished edges, all round" />;
    case 'load':
      return <LoadPicture design={design} />;
    case 'close':
      return <WrapPicture design={design} label="Closed cover under a weight, cut across the spine" isPressed />;
  }
}

/** The pattern with what is tooled into it. */
function TooledPattern({ design, highest }: Omit<StepPictureProps, 'step'>) {
  return <Pattern drawing={useTooledPattern(design)} layers={TOOLED} highest={highest} />;
}

const TOOLED: readonly Layer[] = ['cut', 'fold', 'area', 'tooling'];

interface PatternProps {
  readonly drawing: Drawing;
  readonly layers: readonly Layer[];
  readonly highest: number | undefined;
}

/** Height of the page that all else of a step takes, and the least of a picture, px. */
const ELSE = 320;
const LEAST = 256;

/** All pieces, no higher than lets them stand above the buttons; the lettering keeps its size. */
function Pattern({ drawing, layers, highest }: PatternProps) {
  const page = useSyncExternalStore(onResize, () => window.innerHeight);
  const room = highest ?? Math.max(LEAST, page - ELSE);
  return <PatternSheet drawing={drawing} layers={layers} lettering={LETTERING} highest={room} />;
}

const onResize = (tell: () => void) => {
  window.addEventListener('resize', tell);
  return () => window.removeEventListener('resize', tell);
};
