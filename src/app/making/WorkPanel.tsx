import { useMemo, useState } from 'react';
import { REMINDER } from '../../output/benchSheet/benchSheetContent.ts';
import { orderOfWork } from '../../output/benchSheet/orderOfWork.ts';
import { workSource } from '../../output/benchSheet/workSource.ts';
import { fileName } from '../../output/fileName.ts';
import type { SheetOptions } from '../../output/pdf/sheetFile.ts';
import { Choice } from '../fields/Choice.tsx';
import { goToField } from '../fields/goToField.ts';
import type { Bench } from '../state/bench.ts';
import { lagging } from '../state/lagging.tsx';
import { addressOf } from '../state/place.ts';
import { saveFile } from '../state/saveFile.ts';
import { MakingNote } from './MakingNote.tsx';
import { Notes, Panel } from './PanelParts.tsx';
import { OrderFields } from './steps/OrderFields.tsx';
import { StepPicture } from './steps/picture/StepPicture.tsx';
import { StepBody } from './steps/StepBody.tsx';
import { StepCautions } from './steps/StepCautions.tsx';
import { sentence } from './steps/sentence.ts';
import { useMaking } from './useMaking.ts';
import './steps/steps.css';

const PAPERS = [
  { value: 'A4', label: 'A4' },
  { value: 'Letter', label: 'Letter' },
];

/** Of the pattern in a card, px. */
const HIGHEST = 260;

/** The order of work as cards, each with its picture and its cautions, and the bench sheet. */
function WorkPanel({ design }: Pick<Bench, 'design'>) {
  const [paper, setPaper] = useState<'A4' | 'Letter'>('A4');
  const [making, make] = useMaking();
  const { cards, notes } = useMemo(() => {
    const source = workSource(design);
    return { cards: orderOfWork(source), notes: [...source.drawing.notes, ...source.supplies.notes] };
  }, [design]);
  const save = async (onLacking: SheetOptions['onLacking']): Promise<void> => {
    const { benchSheetPdf } = await import('../../output/benchSheet/benchSheetPdf.ts');
    const file = await benchSheetPdf(design, { paper, onLacking });
    saveFile(fileName(design.job.name, 'bench-sheet.pdf', [paper]), file, 'application/pdf');
  };
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
            <Choice
              title="Sheet"
              options={PAPERS}
              chosen={paper}
              choose={(value) => setPaper(value as 'A4' | 'Letter')}
            />
            <button
              type="button"
              className="main"
              disabled={making.status === 'making'}
              onClick={() => make('bench sheet', save)}
            >
              Save the bench sheet as PDF
            </button>
            <MakingNote making={making} />
          </section>
        </>
      }
    >
      <p className="row">
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
