import plainUrl from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';
import boldUrl from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url';
import { fontFile } from '../../artwork/faces/fontFile.ts';

/**
 * The faces of every sheet: DejaVu Sans Condensed 2.37, a free font with Latin (Polish and Vietnamese too), Greek, Cyrillic
 * and many signs. Its licence is public/fonts/DejaVu-LICENSE.txt.
 */
export const FACES = {
  plain: { name: 'DejaVuSansCondensed', url: plainUrl },
  bold: { name: 'DejaVuSansCondensed-Bold', url: boldUrl },
} as const;

export type Face = keyof typeof FACES;

/** The font file of a face, loaded once on demand; rejects with an Error that says what to do. */
export const letterFile = (face: Face): Promise<Uint8Array> =>
  fontFile(FACES[face].url, `dejavu-fonts-ttf/ttf/${FACES[face].name}.ttf`);
