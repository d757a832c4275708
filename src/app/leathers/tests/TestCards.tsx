import type { LeatherTests, StockLeather } from '../../../core/index.ts';
import { TEST_CARDS } from './cards.ts';
import { SaveStrips } from './SaveStrips.tsx';
import { TestCard } from './TestCard.tsx';
import './tests.css';

interface TestCardsProps {
  readonly leather: StockLeather;
  readonly change: (next: LeatherTests) => void;
}

/** The four tests of a leather, each with what its readings say. */
export function TestCards({ leather, change }: TestCardsProps) {
  return (
    <section aria-labelledby="leather-tests-title">
      <h3 id="leather-tests-title">Tests of this leather</h3>
      <p className="help">
        An hour of work over two days, with strips of this very hide. Each test makes a cover surer than any figure from
        a table.
      </p>
      <SaveStrips name={leather.name} />
      <div className="test-cards">
        {TEST_CARDS.map((card) => (
          <TestCard key={card.test} card={card} tests={leather.tests} change={change} />
        ))}
      </div>
    </section>
  );
}
