import { useEffect, useMemo, useState } from 'react';
import {
  type CoverDesign,
  type Drawing,
  halfCard,
  LAYERS,
  type LetterFaces,
  mirroredDrawing,
  oneCard,
  patternDrawing,
  tooledFaces,
  tooledPattern,
  tracingDrawing,
} from '../../../core/index.ts';
import { PatternSheet } from '../../sheet/PatternSheet.tsx';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { useLetterFaces } from '../../state/useLetterFaces.ts';
import { cardOf } from '../cardOf.ts';
import { Notes, Panel } from '../PanelParts.tsx';
import { pictureAddress } from '../tooling/pictureAddress.ts';
import { CuttingFile } from './CuttingFile.tsx';
import { PaperTemplate } from './PaperTemplate.tsx';
import { PatternMadeIn } from './PatternMadeIn.tsx';
import { readTemplate } from './readTemplate.ts';
import { ToolingChoice } from './ToolingChoice.tsx';
import { keepTemplateChoice, keptTemplateChoice, type TemplateChoice } from './templateChoice.ts';

/** The cards that a template may be drawn on, and what they are called in titles and file names. */
const CARDS = {
  pieces: { name: '', drawn: patternDrawing },
  one: { name: 'one card', drawn: oneCard },
  half: { name: 'half card', drawn: halfCard },
} as const;

/** The template: printed in true size, or as a file for a cutter, for card or for leather. */
function TemplatePanel({ design }: Pick<Bench, 'design'>) {
  const [choice, setWholeChoice] = useState(keptTemplateChoice);
  useEffect(() => void keepTemplateChoice(choice), [choice]);
  const choose = (change: Partial<TemplateChoice>): void => setWholeChoice((whole) => ({ ...whole, ...change }));
  const { designs } = design.job.tooling;
  const { faces, isLoading, failure } = useLetterFaces(designs);
  const isTooled = designs.length > 0;
  const isTracing = isTooled && choice.drawn === 'tracings';
  const { madeIn, cards, hasTooling } = choice;
  const drawing = useMemo(() => {
    const words = isTracing ? ['tracings'] : [madeIn, CARDS[cards].name];
    return {
      ...(isTracing ? tracings(design, faces) : pattern(design, madeIn, cards, hasTooling ? faces : null)),
      title: [design.job.name, ...words].filter(Boolean).join(', '),
    };
  }, [design, faces, isTracing, madeIn, cards, hasTooling]);
  const mirrored = isTracing ? choice.transferred : choice.mirrored;
  const seen = useMemo(() => (mirrored ? mirroredDrawing(drawing) : drawing), [drawing, mirrored]);
  const settings = useMemo(() => readTemplate(choice), [choice]);
  const layers = useMemo(
    () =>
      LAYERS.filter((layer) => (layer === 'area' && !isTracing ? choice.hasAreas : !choice.leftOut.includes(layer))),
    [choice.leftOut, choice.hasAreas, isTracing],
  );
  const variants = [...(isTracing ? ['tracings'] : [madeIn, CARDS[cards].name]), mirrored ? 'mirrored' : ''];
  const parts = { choice, choose, settings, drawing, mirrored, isTracing, layers, variants };
  const lettersNote = isLoading ? 'The letters are being fetched.' : failure;
  return (
    <Panel
      name="Template"
      fields={
        <>
          {isTooled && <ToolingChoice {...parts} lettersNote={lettersNote} />}
          {!isTracing && <PatternMadeIn {...parts} />}
          <PaperTemplate {...parts} />
          <CuttingFile {...parts} />
        </>
      }
    >
      <h3>
        {isTracing ? 'Tracings' : `In ${madeIn}`}, {seen.faceUp}
      </h3>
      <PatternSheet highest={640} drawing={seen} layers={[...layers, 'area']} pictureAddress={pictureAddress} />
      <Notes notes={seen.notes} />
    </Panel>
  );
}

const tracings = (design: CoverDesign, faces: LetterFaces): Drawing =>
  tracingDrawing(design, tooledFaces(design, faces));

/** @param faces letters of the tooling that it shows; null leaves tooling out */
function pattern(
  design: CoverDesign,
  madeIn: TemplateChoice['madeIn'],
  cards: TemplateChoice['cards'],
  faces: LetterFaces | null,
): Drawing {
  const made = madeIn === 'card' ? cardOf(design.job) : design;
  return cards === 'pieces' && faces !== null ? tooledPattern(made, faces) : CARDS[cards].drawn(made);
}

export default lagging(({ design }) => ({ design }), TemplatePanel);
