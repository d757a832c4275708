import { useEffect, useMemo, useState } from 'react';
import { mirroredDrawing, patternDrawing } from '../../../core/index.ts';
import { PatternSheet } from '../../sheet/PatternSheet.tsx';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { cardOf } from '../cardOf.ts';
import { Notes, Panel } from '../PanelParts.tsx';
import { CuttingFile } from './CuttingFile.tsx';
import { PaperTemplate } from './PaperTemplate.tsx';
import { PatternMadeIn } from './PatternMadeIn.tsx';
import { readTemplate } from './readTemplate.ts';
import { keepTemplateChoice, keptTemplateChoice, type TemplateChoice } from './templateChoice.ts';

/** The template: printed in true size, or as a file for a cutter, for card or for leather. */
function TemplatePanel({ design }: Pick<Bench, 'design'>) {
  const [choice, setWholeChoice] = useState(keptTemplateChoice);
  useEffect(() => void keepTemplateChoice(choice), [choice]);
  const choose = (change: Partial<TemplateChoice>): void => setWholeChoice((whole) => ({ ...whole, ...change }));
  const drawing = useMemo(() => {
    const { job } = design;
    const made = choice.madeIn === 'card' ? cardOf(job) : design;
    return { ...patternDrawing(made), title: `${job.name}, ${choice.madeIn}` };
  }, [design, choice.madeIn]);
  const seen = useMemo(() => (choice.mirrored ? mirroredDrawing(drawing) : drawing), [drawing, choice.mirrored]);
  const settings = useMemo(() => readTemplate(choice), [choice]);
  const parts = { choice, choose, settings, drawing };
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
      <PatternSheet highest={640} drawing={seen} layers={choice.layers} />
      <Notes notes={seen.notes} />
    </Panel>
  );
}

export default lagging(({ design }) => ({ design }), TemplatePanel);
