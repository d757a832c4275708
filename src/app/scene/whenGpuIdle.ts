import type { WebGLRenderer } from 'three';

/** Between two looks at whether the work is done, ms. */
const PAUSE = 25;

/**
 * Calls back when the graphics driver has done all that it was asked so far, compiling shaders included, without stopping
 * the page for it. Returns a way to call it off.
 */
export function whenGpuIdle({ getContext }: WebGLRenderer, act: () => void): () => void {
  const context = getContext() as WebGL2RenderingContext;
  const fence = context.fenceSync(context.SYNC_GPU_COMMANDS_COMPLETE, 0);
  context.flush();
  const timer = setInterval(() => {
    // A lost context has no fence, and nothing left to wait for.
    const isWaiting = fence !== null && context.clientWaitSync(fence, 0, 0) === context.TIMEOUT_EXPIRED;
    if (isWaiting) return;
    clearInterval(timer);
    context.deleteSync(fence);
    act();
  }, PAUSE);
  return () => clearInterval(timer);
}
