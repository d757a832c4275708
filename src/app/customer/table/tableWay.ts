/** How this device can show the cover on a table: not at all, with the reason, where it has none. */
export type TableWay =
  | { readonly kind: 'asking' }
  /** By WebXR, in the page. */
  | { readonly kind: 'session'; readonly system: XRSystem }
  /** By a link to a model as USDZ, which the device itself opens. */
  | { readonly kind: 'link' }
  | { readonly kind: 'none'; readonly why: string };

/** Asks the browser what it can do; never throws. */
export async function tableWay(): Promise<TableWay> {
  // A token that is not in HTML: browsers that open such a link say so.
  if (document.createElement('a').relList.supports?.('ar')) return { kind: 'link' };
  if (!window.isSecureContext)
    return { kind: 'none', why: 'The camera view needs a secure address, which begins with https.' };
  const { xr } = navigator;
  if (xr === undefined) return { kind: 'none', why: NO_VIEW };
  const isSupported = await xr.isSessionSupported('immersive-ar').catch(() => false);
  return isSupported ? { kind: 'session', system: xr } : { kind: 'none', why: NO_VIEW };
}

const NO_VIEW =
  'This browser has no camera view that things can be laid in. A telephone or tablet with one shows a button here.';
