/**
 * Why a part of the page could not be fetched: the server has a newer version in its place, or it does not answer.
 *
 * Parts are fetched when they are first needed; a page that stays open past a deploy asks for files that are gone.
 */
export type MissingPart = 'replaced' | 'unreachable';

let missing: MissingPart | null = null;
const listeners = new Set<() => void>();

export const missingPart = (): MissingPart | null => missing;

export function watchMissingPart(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Asks the server whether its page is still this version. */
async function whyMissing(): Promise<MissingPart> {
  try {
    const page = await fetch(window.location.pathname, { cache: 'no-store' });
    const own = document.querySelector<HTMLScriptElement>('script[type=module][src]')?.getAttribute('src') ?? '';
    return page.ok && !(await page.text()).includes(own) ? 'replaced' : 'unreachable';
  } catch {
    return 'unreachable';
  }
}

/** Watches for parts that cannot be fetched. The error still reaches the importer, with a message in plain words. */
export function hearOfMissingParts(): void {
  window.addEventListener('vite:preloadError', ({ payload }) => {
    payload.message = 'a part of Coverwright could not be fetched. The note at the top of the page says what to do.';
    void whyMissing().then((why) => {
      missing = why;
      for (const listener of listeners) listener();
    });
  });
}
