import plainUrl from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';
import boldUrl from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url';

/**
 * The faces of every sheet: DejaVu Sans Condensed 2.37, a free font with Latin (Polish and Vietnamese too), Greek, Cyrillic
 * and many signs. Its licence is public/fonts/DejaVu-LICENSE.txt.
 */
export const FACES = {
  plain: { name: 'DejaVuSansCondensed', url: plainUrl },
  bold: { name: 'DejaVuSansCondensed-Bold', url: boldUrl },
} as const;

export type Face = keyof typeof FACES;

const files = new Map<Face, Promise<Uint8Array>>();

/** The font file of a face, loaded once on demand; rejects with an Error that says what to do. */
export function letterFile(face: Face): Promise<Uint8Array> {
  const known = files.get(face);
  if (known !== undefined) return known;
  const file = load(face);
  files.set(face, file);
  // What failed once, as without a network, may succeed later.
  file.catch(() => files.delete(face));
  return file;
}

async function load(face: Face): Promise<Uint8Array> {
  const { name, url } = FACES[face];
  // The command line and the tests read the font from its package, the page from its own files.
  const node = globalThis.process?.getBuiltinModule;
  if (node !== undefined) {
    const path = node('node:module')
      .createRequire(import.meta.url)
      .resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`);
    return node('node:fs/promises').readFile(path);
  }
  const response = await fetch(url);
  if (!response.ok)
    throw new Error(
      `The letters for the sheet could not be fetched: got status ${response.status} for ${name}. Reload the page and try again.`,
    );
  return new Uint8Array(await response.arrayBuffer());
}
