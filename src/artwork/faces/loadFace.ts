import serifUrl from '@expo-google-fonts/crimson-text/400Regular/CrimsonText_400Regular.ttf?url';
import uncialUrl from '@expo-google-fonts/uncial-antiqua/400Regular/UncialAntiqua_400Regular.ttf?url';
import blackletterUrl from '@expo-google-fonts/unifrakturcook/700Bold/UnifrakturCook_700Bold.ttf?url';
import sansUrl from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';
import type { LetterFace } from '../../core/index.ts';
import { fontFace } from './fontFace.ts';
import { fontFile } from './fontFile.ts';
import { strokeFace } from './strokeFace.ts';

const FONTS = '@expo-google-fonts';

/** Open fonts for titles and initials; their licences are in public/fonts. The first is the usual one. */
const SOURCES = {
  /** Crimson Text: Latin with all accents. */
  serif: {
    title: 'Book serif',
    url: serifUrl,
    path: `${FONTS}/crimson-text/400Regular/CrimsonText_400Regular.ttf`,
  },
  /** DejaVu Sans Condensed, which the sheets are set in too: Latin, Greek, Cyrillic and many signs. */
  sans: { title: 'Sans', url: sansUrl, path: 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf' },
  /** Uncial Antiqua: Latin of Western and Central Europe. Its H stands above the other capitals. */
  uncial: {
    title: 'Uncial',
    tall: 'E',
    url: uncialUrl,
    path: `${FONTS}/uncial-antiqua/400Regular/UncialAntiqua_400Regular.ttf`,
  },
  /** UnifrakturCook, bold: Latin of Western Europe. */
  blackletter: {
    title: 'Blackletter',
    url: blackletterUrl,
    path: `${FONTS}/unifrakturcook/700Bold/UnifrakturCook_700Bold.ttf`,
  },
  /** Hershey Sans: Latin with accents, Greek, Cyrillic. */
  singleLine: { title: 'Single line' },
} as const;

export type FaceId = keyof typeof SOURCES;

/** What a maker chooses from, before any font is loaded. */
export const FACE_CHOICES: readonly { readonly id: FaceId; readonly title: string }[] = (
  Object.keys(SOURCES) as FaceId[]
).map((id) => ({ id, title: SOURCES[id].title }));

const faces = new Map<FaceId, Promise<LetterFace>>();

/**
 * A face, loaded once on demand.
 *
 * @param id of `FACE_CHOICES`; any other, as an empty one, gives the first
 * @returns the face; rejects with an Error that says what to do where its font cannot be fetched
 */
export function loadFace(id: string): Promise<LetterFace> {
  const known = FACE_CHOICES.find((face) => face.id === id)?.id ?? FACE_CHOICES[0]!.id;
  const face = faces.get(known) ?? load(known);
  faces.set(known, face);
  face.catch(() => faces.delete(known));
  return face;
}

async function load(id: FaceId): Promise<LetterFace> {
  const source = SOURCES[id];
  if ('url' in source) {
    const bytes = await fontFile(source.url, source.path);
    return fontFace(id, source.title, bytes, 'tall' in source ? source.tall : undefined);
  }
  const { default: letters } = await import('./hersheySans.json');
  return strokeFace(id, source.title, letters);
}
