import type { Caution } from '../../../output/benchSheet/orderOfWork.ts';

/** Cautions of a step: in full where each is first due, afterwards a sign that opens it. */
export function StepCautions({ cautions }: { readonly cautions: readonly Caution[] }) {
  return cautions.map((caution) =>
    caution.isFirst ? (
      <div key={caution.number} className="step-caution">
        <Sign number={caution.number} />
        <p>{caution.words}</p>
      </div>
    ) : (
      <details key={caution.number} className="step-caution">
        <summary>
          <Sign number={caution.number} />
          <span>
            {caution.subject.charAt(0).toUpperCase()}
            {caution.subject.slice(1)}
          </span>
        </summary>
        <p>{caution.words}</p>
      </details>
    ),
  );
}

const Sign = ({ number }: Pick<Caution, 'number'>) => (
  <svg className="caution-sign" viewBox="0 0 24 22" role="img" aria-label={`Caution ${number}.`}>
    <path d="M12 1.5L23 20.5H1Z" />
    <text x={12} y={17.5}>
      {number}
    </text>
  </svg>
);
