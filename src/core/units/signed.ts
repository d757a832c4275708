/** Gives a printed number its true minus sign, U+2212, and takes it from one that prints as nothing. */
export const signed = (text: string): string => (Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−'));
