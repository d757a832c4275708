import { type CoverDesign, cardDesign, type Layer, patternDrawing } from '../../../../core/index.ts';
import type { WorkCard } from '../../../../output/benchSheet/orderOfWork.ts';
import { PatternSheet } from '../../../sheet/PatternSheet.tsx';
import { AssembledPicture } from './AssembledPicture.tsx';
import { BookPicture } from './BookPicture.tsx';
import { LoadPicture } from './LoadPicture.tsx';
import { remembered } from './remembered.ts';
import { SeamPicture } from './SeamPicture.tsx';
import { WrapPicture } from './WrapPicture.tsx';
import './picture.css';

interface StepPictureProps {
  readonly step: Pick<WorkCard, 'id' | 'name'>;
  readonly design: CoverDesign;
}

/** Height of the lettering of a pattern, px: read from a step away. */
const LETTERING = 13;

const drawingOf = remembered(patternDrawing);
const cardOf = remembered(({ job }: CoverDesign) => cardDesign(job, job.mockup.card));

/** What one step looks like, drawn to scale from the design. */
export function StepPicture({ step, design }: StepPictureProps) {
  return (
    <div className="step-picture" data-step={step.id}>
      {pictureOf(step, design)}
    </div>
  );
}

function pictureOf({ id }: StepPictureProps['step'], design: CoverDesign) {
  const pattern = (...layers: Layer[]) => (
    <PatternSheet drawing={drawingOf(design)} layers={layers} lettering={LETTERING} />
  );
  switch (id) {
    case 'measure':
      return <BookPicture design={design} />;
    case 'mockup':
      return <WrapPicture design={cardOf(design)} label="Card on the closed book, cut across the spine" />;
    case 'cut':
      return pattern('cut', 'direction');
    case 'edges':
      return pattern('cut', 'fold', 'skive');
    case 'punch':
      return pattern('cut', 'hole');
    case 'fittings':
      return pattern('cut', 'hole', 'mark', 'fold');
    case 'assemble':
      return (
        <AssembledPicture drawing={drawingOf(design)} design={design} label="Pockets laid on, seen from the inside" />
      );
    case 'stitch':
    case 'lace':
      return <SeamPicture drawing={drawingOf(design)} design={design} />;
    case 'finish':
      return <AssembledPicture drawing={drawingOf(design)} design={design} label="Edges to burnish, all round" />;
    case 'load':
      return <LoadPicture design={design} />;
    case 'close':
      return <WrapPicture design={design} label="Closed cover under a weight, cut across the spine" isPressed />;
  }
}
