import fc from 'fast-check';
import { jobDocument } from '../jobArbitrary.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

/** Jobs with every way of making the pieces: corners, mouths, linings, straps, loops, pitches and margins. */
export const constructedJob = fc
  .record({
    document: jobDocument,
    corners: fc.constantFrom('square' as const, 'rounded' as const, 'clipped' as const),
    cornerRadius_mm: between(0.5, 40),
    mouth: fc.constantFrom('straight' as const, 'curved' as const),
    lining: fc.constantFrom('centre' as const, 'full' as const),
    pitch_mm: between(2, 8),
    edgeMargin_mm: between(2, 9),
    strap: fc.boolean(),
    penLoop: fc.boolean(),
    whip: fc.boolean(),
  })
  .map(({ document, corners, cornerRadius_mm, mouth, lining, pitch_mm, edgeMargin_mm, ...draw }) => {
    // A loop of the usual 35 mm beside a strap of 30 mm, which else is refused.
    const hasRoom =
      !draw.strap || (document.book.height_mm - 30) / 2 - (corners === 'square' ? 0 : cornerRadius_mm) > 35;
    return {
      ...document,
      seam: {
        ...document.seam,
        ...(document.seam.method === 'lacing' && draw.whip ? { style: 'whip' as const } : {}),
        cornerRadius_mm,
        pitch_mm,
        edgeMargin_mm,
      },
      construction: {
        corners,
        mouth,
        lining: document.leather.lining === null ? ('centre' as const) : lining,
        strap: draw.strap ? { width_mm: 30 } : null,
        penLoop: draw.penLoop && document.pockets.construction === 'separate' && hasRoom ? {} : null,
      },
    };
  });
