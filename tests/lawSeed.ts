/**
 * Gives all laws of a run one seed, which a failed run can be repeated with: `SEED=20270131 npm run unit`. It stays the same
 * for the tests of a push, so that what a push is refused for is its own; `LAWS=full` takes the date, other cases each day.
 */
export default function lawSeed(): void {
  const isFull = process.env.LAWS === 'full';
  process.env.SEED ??= isFull ? new Date().toISOString().slice(0, 10).replaceAll('-', '') : '20261126';
  console.info(`Random laws: SEED=${process.env.SEED}${isFull ? ' LAWS=full' : ''}`);
}
