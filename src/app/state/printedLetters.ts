import { letterFile } from '../../output/pdf/letterFiles.ts';

/** The family that style sheets call in print; `app/styles/print.css` has the same name. */
const FAMILY = 'Printed letters';

let loading: Promise<void> | undefined;

/**
 * Loads the face of the PDF sheets for what the browser prints, ahead of any print: once that has begun it waits for nothing. A
 * browser that cannot load it prints in its own face.
 */
export function loadPrintedLetters(): Promise<void> {
  loading ??= Promise.all(
    (
      [
        ['plain', '400'],
        ['bold', '700'],
      ] as const
    ).map(async ([face, weight]) => {
      // From bytes: the page may load no font by its address.
      const bytes = await letterFile(face);
      document.fonts.add(await new FontFace(FAMILY, new Uint8Array(bytes).buffer, { weight }).load());
    }),
  ).then(
    () => {},
    () => {
      loading = undefined;
    },
  );
  return loading;
}
