import { useEffect, useRef } from 'react';
import { type CustomerSheet, OPENINGS } from '../../output/customerSheet/customerSheet.ts';
import { VerdictMark } from '../panel/VerdictMark.tsx';
import type { CoverPicture } from '../stage/coverPicture.ts';
import { RoomDrawing } from './RoomDrawing.tsx';
import { TurningCover } from './TurningCover.tsx';
import { WeightsTable } from './WeightsTable.tsx';

interface CustomerPageProps {
  readonly sheet: CustomerSheet;
  /** The maker's mark as a data address; null for none. */
  readonly mark: string | null;
  readonly isTurning: boolean;
  readonly closed: CoverPicture;
  readonly open: CoverPicture;
}

/** The page that a customer reads: on the screen, on paper and in a link. Nothing on it can change the job. */
export function CustomerPage({ sheet, mark, isTurning, closed, open }: CustomerPageProps) {
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  const { covers, passages, weights, madeOf, agreement } = sheet;
  return (
    <main className="customer-sheet">
      <header className="customer-head">
        <div>
          <h1 ref={title} tabIndex={-1}>
            {sheet.title}
          </h1>
          <p>{sheet.lead}</p>
          {sheet.date !== '' && <p>{sheet.date}</p>}
        </div>
        {mark !== null && <img src={mark} alt="The mark of the maker" />}
      </header>
      <div className="customer-body">
        <div className="customer-covers">
          <TurningCover opening={OPENINGS.closed} caption={covers.closed} isTurning={isTurning} picture={closed} />
          <TurningCover opening={OPENINGS.open} caption={covers.open} isTurning={isTurning} picture={open} />
        </div>
        <div className="customer-words">
          <p className="customer-fit" data-verdict={sheet.verdict}>
            <VerdictMark verdict={sheet.verdict} />
            {sheet.fit}
          </p>
          {passages.map(({ heading, sentences, picture }) => (
            <section key={heading}>
              <h2>{heading}</h2>
              {sentences.map((words) => (
                <p key={words}>{words}</p>
              ))}
              {picture !== null && <RoomDrawing picture={picture} />}
            </section>
          ))}
          <section className="customer-facts">
            <h2>{madeOf.heading}</h2>
            <dl>
              {madeOf.facts.map(({ name, value }) => (
                <div key={name}>
                  <dt>{name}</dt>
                  <dd>{value}</dd>
                </div>
              ))}
            </dl>
          </section>
        </div>
      </div>
      <WeightsTable {...weights} />
      <p className="help">{sheet.caution}</p>
      <section className="customer-agreement only-printed">
        <h2>{agreement.heading}</h2>
        <p>{agreement.sentence}</p>
        <ul>
          {agreement.blanks.map((name) => (
            <li key={name}>{name}</li>
          ))}
        </ul>
      </section>
    </main>
  );
}
