import * as z from 'zod/mini';
import { isPicture, pictureHeader } from '../../artwork/picture/pictureHeader.ts';
import { sizeIssue } from '../../artwork/readArtwork.ts';
import { Refusal } from '../../artwork/refusal.ts';
import { drawingText } from '../../artwork/svg/drawingText.ts';
import { keptChoice } from '../state/keptChoice.ts';
import { openArtwork } from '../worker/openArtwork.ts';

/** A PNG that this page has made, as a data address. */
const markSchema = z.object({
  mark: z._default(z.nullable(z.string().check(z.regex(/^data:image\/png;base64,[A-Za-z0-9+/=]+$/))), null),
});

const kept = keptChoice('coverwright.mark.v1', markSchema);

/** The maker's mark that this browser keeps, as a data address; null for none. */
export const keptMark = (): string | null => kept.read().mark;

/** Keeps the mark for the next time; false where the browser refuses. */
export const keepMark = (mark: string | null): boolean => kept.keep({ mark });

/** Widths that a mark is drawn in, pixels, the first that stays within the limit; it is printed 44 mm wide. */
const WIDTHS = [600, 400, 260] as const;
/** Twice as wide as high, as on paper. */
const SHAPE = 2;
const MOST_CHARACTERS = 400_000;

export type ReadMark = { readonly ok: true; readonly mark: string } | { readonly ok: false; readonly why: string };

/**
 * Reads a picture of the maker's own and draws it anew, so that nothing of the file itself is kept. The limits are those of
 * pictures and drawings for tooling.
 */
export async function readMark(file: File): Promise<ReadMark> {
  try {
    const issue = sizeIssue(file.size);
    if (issue !== null) return { ok: false, why: issue.words ?? issue.message };
    const bytes = new Uint8Array(await file.arrayBuffer());
    if (isPicture(bytes)) {
      const { type } = pictureHeader(bytes);
      const bitmap = await createImageBitmap(new Blob([bytes], { type }), { imageOrientation: 'from-image' });
      const read = drawn(bitmap, bitmap.width, bitmap.height);
      bitmap.close();
      return read;
    }
    // The reader of drawings says whether it is one, within its limits. Shown as a picture, no script in it runs and nothing is fetched.
    const read = await openArtwork(file, { as: 'lines' });
    if (!read.ok) return { ok: false, why: read.issue.words ?? read.issue.message };
    const { width, height } = read.artwork;
    return await withPicture(plainSvg(bytes), (picture) => drawn(picture, width, height));
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, why: error.issue.words ?? error.issue.message };
    return { ok: false, why: 'This picture cannot be decoded. Save it again as PNG from a picture program.' };
  }
}

/** Draws a picture of this shape as small as it is printed. */
function drawn(picture: CanvasImageSource, width: number, height: number): ReadMark {
  const canvas = document.createElement('canvas');
  for (const most of WIDTHS) {
    const scale = Math.min(most / width, most / SHAPE / height);
    canvas.width = Math.max(1, Math.round(width * scale));
    canvas.height = Math.max(1, Math.round(height * scale));
    const context = canvas.getContext('2d')!;
    context.imageSmoothingQuality = 'high';
    context.drawImage(picture, 0, 0, canvas.width, canvas.height);
    const mark = canvas.toDataURL('image/png');
    if (mark.length <= MOST_CHARACTERS) return { ok: true, mark };
  }
  return { ok: false, why: 'This picture is too rich in detail for a mark. Choose a plainer one.' };
}

/**
 * The text of a drawing as it was read, in UTF-8 whatever the file says.
 * @throws Refusal where it declares entities: the browser's own reader expands them, which can hold the page up for minutes
 */
function plainSvg(bytes: Uint8Array): string {
  const text = drawingText(bytes).replace(/^\s*<\?xml.*?\?>/s, '');
  if (!text.includes('<!ENTITY')) return text;
  throw new Refusal('unreadable', 'declares entities of its own', 'plain SVG', 'save it again as plain SVG or as PNG');
}

async function withPicture<T>(svg: string, use: (picture: HTMLImageElement) => T): Promise<T> {
  const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const picture = new Image();
    picture.src = url;
    await picture.decode();
    return use(picture);
  } finally {
    URL.revokeObjectURL(url);
  }
}

/** The bytes of a mark. */
export const markBytes = (mark: string): Uint8Array =>
  Uint8Array.from(atob(mark.slice(mark.indexOf(',') + 1)), (letter) => letter.charCodeAt(0));
