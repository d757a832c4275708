import { useMemo } from 'react';
import { unbroken } from '../../../output/brokenLines.ts';
import { draftingSheet } from '../../../output/draftingSheet/draftingSheet.ts';
import { fileName } from '../../../output/fileName.ts';
import { cardWords, drawnCards } from '../../../output/template/drawnTemplate.ts';
import type { Bench } from '../../state/bench.ts';
import { lagging } from '../../state/lagging.tsx';
import { cardOf } from '../cardOf.ts';
import { Notes, Panel } from '../PanelParts.tsx';
import { SaveSheet } from '../SaveSheet.tsx';
import { CardChoices } from '../template/CardChoices.tsx';
import { useTemplateChoice } from '../template/useTemplateChoice.ts';
import { DraftFigure } from './DraftFigure.tsx';
import './drafting.css';

/** How to draw the pieces by hand, in words and figures. */
function DraftingPanel({ design }: Pick<Bench, 'design'>) {
  const [choice, choose] = useTemplateChoice();
  const { madeIn, cards } = choice;
  const { source, sheet } = useMemo(() => {
    const { source, drawing } = drawnCards(design, { madeIn, cards }, null, cardOf);
    return { source, sheet: draftingSheet(source, drawing) };
  }, [design, madeIn, cards]);
  return (
    <Panel
      name="Drafting sheet"
      fields={
        <section aria-labelledby="drafting-pattern">
          <h3 id="drafting-pattern">Pattern</h3>
          <p className="help">No printer is needed: print this page, save it, or draw from the screen.</p>
          <CardChoices choice={choice} choose={choose} />
          <SaveSheet
            sheet="drafting sheet"
            source={source}
            nameOf={(paper) => fileName(design.job.name, 'drafting-sheet.pdf', [...cardWords(choice), paper])}
            make={async (options) => {
              const { draftingSheetPdf } = await import('../../../output/draftingSheet/draftingSheetPdf.ts');
              return draftingSheetPdf(sheet, options);
            }}
          />
        </section>
      }
    >
      <h3>{sheet.title}</h3>
      {sheet.introduction.map((words) => (
        <p key={words}>{words}</p>
      ))}
      <p className="caution">Caution. {sheet.caution}</p>
      {sheet.drafts.map((draft) => (
        <section key={draft.title} className="draft">
          <h4>{draft.title}</h4>
          <DraftFigure draft={draft} />
          <ol className="draft-steps">
            {draft.steps.map((step) => (
              <li key={step}>{unbroken(step)}</li>
            ))}
          </ol>
        </section>
      ))}
      <Notes notes={sheet.notes} />
    </Panel>
  );
}

export default lagging(({ design }) => ({ design }), DraftingPanel);
