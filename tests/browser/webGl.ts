/** In the page, before anything of it runs: the browser knows no WebGL, and the section stands in. */
export const withoutWebGl = (): void => {
  Reflect.deleteProperty(window, 'WebGL2RenderingContext');
};

/** In the page, before anything of it runs: the browser knows WebGL, but its driver grants no drawing context. */
export const withoutDrawingContext = (): void => {
  const getContext = HTMLCanvasElement.prototype.getContext;
  HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
    return kind.startsWith('webgl') ? null : Reflect.apply(getContext, this, [kind, ...rest]);
  };
};

/** In the page, before anything of it runs: the scene does all that it does, but its triangles are never filled. */
export const withoutPixels = (): void => {
  for (const draw of ['drawArrays', 'drawElements', 'drawArraysInstanced', 'drawElementsInstanced'] as const)
    WebGL2RenderingContext.prototype[draw] = () => {};
};

/** What a page has drawn since it was asked last: its frames, and what it keeps of textures. */
export interface Drawn {
  /** Of each frame: ms of script, draw calls and triangles. */
  readonly frames: readonly { readonly script: number; readonly calls: number; readonly triangles: number }[];
  /** Bytes of all textures with their smaller copies, at 4 bytes to a pixel; nothing is taken off for those given back. */
  readonly textures: number;
}

/** In the page, before anything of it runs: counts what it draws; `drawn` of the window answers. */
export const countDrawing = (): void => {
  const gl = WebGL2RenderingContext.prototype;
  let [calls, triangles, textures] = [0, 0, 0];
  let frames: Drawn['frames'][number][] = [];
  const watch = <
    K extends 'drawElements' | 'drawArrays' | 'drawElementsInstanced' | 'drawArraysInstanced' | 'texStorage2D',
  >(
    name: K,
    seen: (values: readonly number[]) => void,
  ): void => {
    const own = gl[name] as (...values: number[]) => void;
    gl[name] = function (this: WebGL2RenderingContext, ...values: number[]) {
      seen(values);
      own.apply(this, values);
    } as (typeof gl)[K];
  };
  const draws = (corners = 0, times = 1): void => {
    calls++;
    triangles += (corners / 3) * times;
  };
  watch('drawElements', ([, corners]) => draws(corners));
  watch('drawArrays', ([, , corners]) => draws(corners));
  watch('drawElementsInstanced', ([, corners, , , times]) => draws(corners, times));
  watch('drawArraysInstanced', ([, , corners, times]) => draws(corners, times));
  watch('texStorage2D', ([, levels = 1, , width = 0, height = 0]) => {
    for (let level = 0; level < levels; level++)
      textures += 4 * Math.max(1, width >> level) * Math.max(1, height >> level);
  });
  const soon = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (act) =>
    soon((time) => {
      [calls, triangles] = [0, 0];
      const start = performance.now();
      act(time);
      if (calls > 0) frames.push({ script: performance.now() - start, calls, triangles });
    });
  const drawn = (): Drawn => {
    const since = frames;
    frames = [];
    return { frames: since, textures };
  };
  Object.assign(window, { drawn });
};

/** In the page: what has been drawn since this was asked last. */
export const takeDrawn = (): Drawn => (window as unknown as { drawn: () => Drawn }).drawn();
