/** After a finger is lifted the press itself still follows, ms, unless the finger went elsewhere. */
const PRESS_FOLLOWS = 300;

/**
 * Keeps the notes of the field in use while a press elsewhere is held: they stand above what is pressed, which would move from
 * under the pointer, and the press would end on something else.
 */
export function holdNotes(): void {
  let held: HTMLElement | null = null;
  let waiting = 0;
  const letGo = (): void => {
    clearTimeout(waiting);
    delete held?.dataset.held;
  };
  const hold = (): void => {
    letGo();
    held = document.activeElement as HTMLElement | null;
    if (held) held.dataset.held = '';
  };
  const letGoSoon = (): void => {
    clearTimeout(waiting);
    waiting = window.setTimeout(letGo, PRESS_FOLLOWS);
  };
  window.addEventListener('pointerdown', hold, true);
  window.addEventListener('pointerup', letGoSoon, true);
  window.addEventListener('pointercancel', letGoSoon, true);
  // The press has found what it ends on; the next one must find the notes gone.
  window.addEventListener('click', letGo, true);
}
