/** PostScript points in a millimetre. */
export const PT = 72 / 25.4;
