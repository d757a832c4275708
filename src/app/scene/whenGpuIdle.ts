import type { WebGLRenderer } from 'three';

/** Polling interval, ms. */
const PAUSE = 25;

/**
 * Calls back when the graphics driver has finished all commands so far, shader compilation included, without blocking
 * the page. Returns a function that cancels it.
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
