/** Gives a printed number its true minus sign, U+2212, and takes it from one that prints as nothing. */
export const signed = (text: string): string => (Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−'));

/** Prints the range that a field allows, such as `−5 to 3 %`. */
export const allowedRange = (min: number, max: number, unit = ''): string =>
  `${signed(String(min))} to ${signed(String(max))} ${unit}`.trim();
