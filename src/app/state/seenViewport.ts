/**
 * Keeps `--seen-top` and `--seen-height` of the page at the part of it that is in sight. A browser whose keyboard lies over
 * the page moves that part without telling the layout. Returns a way to stop.
 */
export function followSeenViewport(): () => void {
  const { visualViewport: seen } = window;
  if (seen === null) return () => {};
  const { style } = document.documentElement;
  const follow = (): void => {
    // Whoever enlarges with two fingers chooses what to see.
    if (seen.scale > 1.01) return;
    style.setProperty('--seen-top', `${seen.offsetTop}px`);
    style.setProperty('--seen-height', `${seen.height}px`);
  };
  const events = ['resize', 'scroll'] as const;
  for (const event of events) seen.addEventListener(event, follow);
  // A keyboard comes after the field has the focus, and may come over it.
  seen.addEventListener('resize', keepFieldInSight);
  return () => {
    for (const event of events) seen.removeEventListener(event, follow);
    seen.removeEventListener('resize', keepFieldInSight);
  };
}

/** Scrolls as little as shows the entry in use: with what is said under it, or alone where that is too high. */
export function keepFieldInSight(): void {
  const entry = document.activeElement;
  if (!(entry instanceof HTMLInputElement)) return;
  entry.closest('.field')?.scrollIntoView({ block: 'nearest' });
  entry.scrollIntoView({ block: 'nearest' });
}
