/** Written in every cutting file. Common practice, no source. */
export const LASER_CAUTION: readonly string[] = [
  'Laser: never cut PVC, or anything that may hold it: it frees toxic, corrosive fumes (hydrogen chloride).',
  'Chrome-tanned leather: its fumes may carry chromium; many machine makers forbid it. Vegetable-tanned leather gives smoke: extract it.',
  'Follow the machine maker and the local rules. Cut a test square first and measure it.',
];
