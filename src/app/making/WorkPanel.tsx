import { useMemo } from 'react';
import { sentence } from '../../core/index.ts';
import { REMINDER } from '../../output/benchSheet/benchSheetContent.ts';
import { orderOfWork } from '../../output/benchSheet/orderOfWork.ts';
import { workSource } from '../../output/benchSheet/workSource.ts';
import { fileName } from '../../output/fileName.ts';
import { goToField } from '../fields/goToField.ts';
import type { Bench } from '../state/bench.ts';
import { lagging } from '../state/lagging.tsx';
import { addressOf } from '../state/place.ts';
import { Notes, Panel } from './PanelParts.tsx';
import { SaveSheet } from './SaveSheet.tsx';
import { OrderFields } from './steps/OrderFields.tsx';
import { StepPicture } from './steps/picture/StepPicture.tsx';
import { StepBody } from './steps/StepBody.tsx';
import { StepCautions } from './steps/StepCautions.tsx';
import './steps/steps.css';

/** Of the pattern in a card, px. */
const HIGHEST = 260;

/** The order of work as cards, each with its picture and its cautions, and the bench sheet. */
function WorkPanel({ design }: Pick<Bench, 'design'>) {
  const { cards, notes } = useMemo(() => {
    const source = workSource(design);
    return { cards: orderOfWork(source), notes: [...source.drawing.notes, ...source.supplies.notes] };
  }, [design]);
  return (
    <Panel
      name="Order of work"
      fields={
        <>
          <OrderFields />
          <section aria-labelledby="bench-sheet">
            <h3 id="bench-sheet">Bench sheet</h3>
            <p className="help">
              One or two pages: sizes with their sums, seam, layers, supplies, and the order of work with its cautions.
            </p>
            <SaveSheet
              sheet="bench sheet"
              nameOf={(paper) => fileName(design.job.name, 'bench-sheet.pdf', [paper])}
              make={async (options) => {
                const { benchSheetPdf } = await import('../../output/benchSheet/benchSheetPdf.ts');
                return benchSheetPdf(design, options);
              }}
            />
          </section>
        </>
      }
    >
      <p className="row work-doors">
        <a className="link" href={addressOf('workbench', 'steps')}>
          Work step by step
        </a>
        <button type="button" className="quiet not-printed" onClick={() => goToField('order.holes')}>
          Change the order
        </button>
      </p>
      <p>{REMINDER}</p>
      <ol className="work-cards">
        {cards.map((card, i) => (
          <li key={card.id}>
            <h4>
              {i + 1}. {card.name} <span>{card.time}</span>
            </h4>
            {card.done !== null && <p className="step-day">{sentence(card.done)}</p>}
            <StepPicture step={card} design={design} highest={HIGHEST} />
            <StepBody step={card} />
            <StepCautions cautions={card.cautions} />
          </li>
        ))}
      </ol>
      {notes.length > 0 && <h3>Notes</h3>}
      <Notes notes={notes} />
    </Panel>
  );
}

export default lagging(({ design }) => ({ design }), WorkPanel);
