import { useEffect, useMemo, useState } from 'react';
import { halfCard, LAYERS, mirroredDrawing, oneCard, patternDrawing } from '../../../core/index.ts';
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
  const drawing = useMemo(() => {
    const { job } = design;
    const made = choice.madeIn === 'card' ? cardOf(job) : design;
    const title = [job.name, choice.madeIn, CARDS[choice.cards].name].filter(Boolean).join(', ');
    return { ...CARDS[choice.cards].drawn(made), title };
  }, [design, choice.madeIn, choice.cards]);
  const seen = useMemo(() => (choice.mirrored ? mirroredDrawing(drawing) : drawing), [drawing, choice.mirrored]);
  const settings = useMemo(() => readTemplate(choice), [choice]);
  const layers = useMemo(() => LAYERS.filter((layer) => !choice.leftOut.includes(layer)), [choice.leftOut]);
  const variants = [choice.madeIn, CARDS[choice.cards].name, choice.mirrored ? 'mirrored' : ''];
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
