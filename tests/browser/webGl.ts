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
