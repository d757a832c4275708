import { useMemo } from 'react';
import { LAYERS, mirroredDrawing, tooledFaces, tracingDrawing } from '../../../core/index.ts';
import { PatternSheet } from '../../sheet/PatternSheet.tsx';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { useLetterFaces } from '../../state/useLetterFaces.ts';
import { Notes, Panel } from '../PanelParts.tsx';
import { pictureAddress } from '../tooling/pictureAddress.ts';
import { CuttingFile } from './CuttingFile.tsx';
import { cardWords, drawnCards } from './drawnCards.ts';
import { PaperTemplate } from './PaperTemplate.tsx';
import { PatternMadeIn } from './PatternMadeIn.tsx';
import { readTemplate } from './readTemplate.ts';
import { ToolingChoice } from './ToolingChoice.tsx';
import { useTemplateChoice } from './useTemplateChoice.ts';

/** The template, or tracings of the tooling: printed in true size, or as a file for a cutter, for card or for leather. */
function TemplatePanel({ design }: Pick<Bench, 'design'>) {
  const [choice, choose] = useTemplateChoice();
  const { madeIn, cards, hasTooling } = choice;
  const { name, tooling } = design.job;
  const { faces, isLoading, note } = useLetterFaces(tooling.designs);
  const isTooled = tooling.designs.length > 0;
  const isTracing = isTooled && choice.drawn === 'tracings';
  const drawing = useMemo(
    () =>
      isTracing
        ? { ...tracingDrawing(design, tooledFaces(design, faces)), title: `${name}, tracings` }
        : drawnCards(design, { madeIn, cards }, hasTooling ? faces : null).drawing,
    [design, faces, name, isTracing, madeIn, cards, hasTooling],
  );
  const mirrored = isTracing ? choice.transferred : choice.mirrored;
  const seen = useMemo(() => (mirrored ? mirroredDrawing(drawing) : drawing), [drawing, mirrored]);
  const settings = useMemo(() => readTemplate(choice), [choice]);
  const layers = useMemo(
    () =>
      LAYERS.filter((layer) => (layer === 'area' && !isTracing ? choice.hasAreas : !choice.leftOut.includes(layer))),
    [choice.leftOut, choice.hasAreas, isTracing],
  );
  const variants = [...(isTracing ? ['tracings'] : cardWords(choice)), mirrored ? 'mirrored' : ''];
  const parts = { choice, choose, settings, drawing, mirrored, isTracing, isLoading, layers, variants };
  return (
    <Panel
      name="Template"
      fields={
        <>
          {isTooled && <ToolingChoice {...parts} lettersNote={note} />}
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

export default lagging(({ design }) => ({ design }), TemplatePanel);
