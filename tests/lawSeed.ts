/** Gives all laws of a run one seed, which a failed run can be repeated with: `SEED=20270131 npm run unit`. */
export default function lawSeed(): void {
  process.env.SEED ??= new Date().toISOString().slice(0, 10).replaceAll('-', '');
  console.info(`Random laws: SEED=${process.env.SEED}${process.env.LAWS === 'full' ? ' LAWS=full' : ''}`);
}
