/** In the page: refuses every WebGL context, as a browser without a graphics driver does. */
export function withoutWebGl(): void {
  const getContext = HTMLCanvasElement.prototype.getContext as (kind: string, ...rest: unknown[]) => unknown;
  HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
    return kind.startsWith('webgl') ? null : getContext.call(this, kind, ...rest);
  } as typeof HTMLCanvasElement.prototype.getContext;
}
