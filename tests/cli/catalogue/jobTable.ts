/** A table of jobs: every 7th row is bad, some names span two lines, some covers fail. */
export const jobTable = (rows: number): string =>
  [
    'name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside,pattern.outsideWidth_mm',
    ...Array.from({ length: rows }, (_, i) => {
      const name = i % 5 === 0 ? `"Book ${i}\nin two ""lines"""` : `Book ${i}`;
      const size = `${i % 7 === 3 ? 'x' : 120 + (i % 90)},${180 + (i % 80)},${10 + (i % 20)}`;
      return `${name},${size},4-5 oz,${i % 11 === 0 ? 200 : ''}`;
    }),
    '',
  ].join('\n');
