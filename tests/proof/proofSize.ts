/** True while `npm run proof` runs a must-show whole; the ordinary tests take a seeded sample of it. */
export const isWholeProof = process.env.PROOF !== undefined;

/** How many cases a must-show draws: `whole` under `npm run proof -- NAME`, `sample` in the ordinary tests. */
export const proofSize = (whole: number, sample: number): number => (isWholeProof ? whole : sample);
