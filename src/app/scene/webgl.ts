/** Whether this browser can draw in 3D at all. */
export function hasWebGl(): boolean {
  try {
    const context = document.createElement('canvas').getContext('webgl2');
    // Contexts are few; this one is not needed any more.
    context?.getExtension('WEBGL_lose_context')?.loseContext();
    return context !== null;
  } catch {
    return false;
  }
}
