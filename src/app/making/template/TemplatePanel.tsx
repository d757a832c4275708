import { useMemo } from 'react';
import { LAYERS, mirroredDrawing } from '../../../core/index.ts';
import { PatternSheet } from '../../sheet/PatternSheet.tsx';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { Notes, Panel } from '../PanelParts.tsx';
import { CuttingFile } from './CuttingFile.tsx';
import { cardWords, drawnCards } from './drawnCards.ts';
import { PaperTemplate } from './PaperTemplate.tsx';
import { PatternMadeIn } from './PatternMadeIn.tsx';
import { readTemplate } from './readTemplate.ts';
import { useTemplateChoice } from './useTemplateChoice.ts';

/** The template: printed in true size, or as a file for a cutter, for card or for leather. */
function TemplatePanel({ design }: Pick<Bench, 'design'>) {
  const [choice, choose] = useTemplateChoice();
  const { madeIn, cards } = choice;
  const drawing = useMemo(() => drawnCards(design, { madeIn, cards }).drawing, [design, madeIn, cards]);
  const seen = useMemo(() => (choice.mirrored ? mirroredDrawing(drawing) : drawing), [drawing, choice.mirrored]);
  const settings = useMemo(() => readTemplate(choice), [choice]);
  const layers = useMemo(() => LAYERS.filter((layer) => !choice.leftOut.includes(layer)), [choice.leftOut]);
  const variants = [...cardWords(choice), choice.mirrored ? 'mirrored' : ''];
  const parts = { choice, choose, settings, drawing, layers, variants };
  return (
    <Panel
      name="Template"
      fields={
        <>
          <PatternMadeIn {...parts} />
          <PaperTemplate {...parts} />
          <CuttingFile {...parts} />
        </>
      }
    >
      <h3>
        In {choice.madeIn}, {seen.faceUp}
      </h3>
      <PatternSheet highest={640} drawing={seen} layers={layers} />
      <Notes notes={seen.notes} />
    </Panel>
  );
}

export default lagging(({ design }) => ({ design }), TemplatePanel);
