import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { CAUTION, customerSheet } from '../../output/customerSheet/customerSheet.ts';
import { VerdictMark } from '../panel/VerdictMark.tsx';
import { useReducedMotion } from '../scene/camera/useReducedMotion.ts';
import { useCoverPicture } from '../stage/coverPicture.ts';
import { useBench } from '../state/BenchContext.tsx';
import { CustomerTools } from './CustomerTools.tsx';
import './customer.css';
import { usePrintedPictures } from '../stage/usePrintedPictures.ts';
import { OPENINGS, TurningCover } from './TurningCover.tsx';

/** One page for the customer, to be looked at, printed or sent: nothing on it can change the job. */
export default function CustomerView() {
  const { design, report, scheme } = useBench(({ design, report, view }) => ({ design, report, scheme: view.scheme }));
  const sheet = useMemo(() => customerSheet(design, report), [design, report]);
  const wantsStill = useReducedMotion();
  const [isTurning, setTurning] = useState(!wantsStill);
  const [showsPrice, setShowsPrice] = useState(true);
  const closed = useCoverPicture();
  const open = useCoverPicture();
  usePrintedPictures(useMemo(() => [closed, open], [closed, open]));
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  // The customer's sheet is light, also while the bench is dark.
  useLayoutEffect(() => {
    const { dataset } = document.documentElement;
    dataset.scheme = 'light';
    return () => {
      dataset.scheme = scheme;
    };
  }, [scheme]);
  const price = showsPrice ? sheet.price : null;

  return (
    <>
      <CustomerTools
        sheet={sheet}
        closed={closed}
        open={open}
        isTurning={isTurning}
        setTurning={setTurning}
        showsPrice={showsPrice}
        setShowsPrice={setShowsPrice}
      />
      <main className="customer-sheet">
        <h1 ref={title} tabIndex={-1}>
          {sheet.title}
        </h1>
        <p className="customer-lead">{sheet.lead}</p>
        <div className="customer-covers">
          <TurningCover opening={OPENINGS.closed} isTurning={isTurning} picture={closed} />
          <TurningCover opening={OPENINGS.open} isTurning={isTurning} picture={open} />
        </div>
        <p className="customer-fit" data-verdict={sheet.verdict}>
          <VerdictMark verdict={sheet.verdict} />
          {sheet.fit}
        </p>
        <dl className="customer-numbers">
          {sheet.numbers.map(({ name, value, means }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
              <dd className="help">{means}</dd>
            </div>
          ))}
        </dl>
        <dl className="customer-facts">
          {sheet.facts.map(({ name, value }) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
          {price !== null && (
            <div>
              <dt>Price</dt>
              <dd>
                <b>{price.amount}</b>
                {price.without !== '' && `, ${price.without}`}
              </dd>
            </div>
          )}
        </dl>
        <p className="help">{CAUTION}</p>
      </main>
    </>
  );
}
