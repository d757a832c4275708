import type { Compared } from '../../output/customerSheet/whyThisLeather.ts';

/** The weights of leather side by side, the chosen one marked. */
export function WeightsTable({ heading, rows, columns, sentences }: Compared) {
  return (
    <section className="customer-weights" aria-labelledby="customer-weights">
      <h2 id="customer-weights">{heading}</h2>
      <table>
        <thead>
          <tr>
            <td />
            {columns.map(({ id, name, isChosen }) => (
              <th key={id} scope="col" data-chosen={isChosen}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, k) => (
            <tr key={row}>
              <th scope="row">{row}</th>
              {columns.map(({ id, isChosen, values }) => (
                <td key={id} data-chosen={isChosen}>
                  {values[k]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <div>
        {sentences.map((words) => (
          <p key={words}>{words}</p>
        ))}
      </div>
    </section>
  );
}
