import { useMemo } from 'react';
import { LAYERS, mirroredDrawing } from '../../../core/index.ts';
import { drawnTemplate } from '../../../output/template/drawnTemplate.ts';
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
import { useTemplateChoice } from './useTemplateChoice.ts';

/** The template, or tracings of the tooling: printed in true size, or as a file for a cutter, for card or for leather. */
function TemplatePanel({ design }: Pick<Bench, 'design'>) {
  const [choice, choose] = useTemplateChoice();
  const { drawn, madeIn, cards, hasTooling, strips, mirrored: isMirrored, transferred } = choice;
  const { tooling } = design.job;
  const { faces, isLoading, note } = useLetterFaces(tooling.designs);
  const isTooled = tooling.designs.length > 0;
  const template = useMemo(() => {
    const asked = { drawn, madeIn, cards, hasTooling, strips, mirrored: isMirrored, transferred };
    return drawnTemplate(design, asked, faces, cardOf);
  }, [design, faces, drawn, madeIn, cards, hasTooling, strips, isMirrored, transferred]);
  const { drawing, mirrored, isTracing } = template;
  const seen = useMemo(() => (mirrored ? mirroredDrawing(drawing) : drawing), [drawing, mirrored]);
  const settings = useMemo(() => readTemplate(choice), [choice]);
  const layers = useMemo(
    () =>
      LAYERS.filter((layer) => (layer === 'area' && !isTracing ? choice.hasAreas : !choice.leftOut.includes(layer))),
    [choice.leftOut, choice.hasAreas, isTracing],
  );
  const parts = { ...template, choice, choose, settings, isLoading, layers };
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
