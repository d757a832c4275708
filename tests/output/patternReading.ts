import type { Vec2 } from '../../src/core/math/vec2.ts';
import { nth } from '../nth.ts';
import { boundsOf } from './outlineDistance.ts';
import type { ReadPage } from './pdfReading.ts';

/** Height of the words at the foot of a page, mm from its lower edge. */
const FOOT = 18;

/** Pages of a template that carry a piece, recognised by the words at their foot. */
export const pagesOf = (pages: readonly ReadPage[], name: string, title = 'Tide ledger'): ReadPage[] =>
  pages.filter(({ words }) => {
    const foot = words
      .filter(({ at }) => at[1] < FOOT)
      .map(({ text }) => text)
      .join('');
    return foot.includes(`${title}: `) && foot.includes(`${name}, cut`);
  });

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Whether a piece of a size lies turned a quarter on a page, and its cut outline there as it lies. */
function found(
  { paths }: ReadPage,
  { width, height }: Size,
): { readonly isTurned: boolean; readonly chain: readonly Vec2[] } {
  const chains = paths
    .filter(({ isDashed, lineWidth }) => !isDashed && Math.abs(lineWidth - 0.3) < 1e-3)
    .flatMap(({ chains }) => chains)
    .filter((chain) => Math.hypot(nth(chain, 0)[0] - nth(chain, -1)[0], nth(chain, 0)[1] - nth(chain, -1)[1]) < 1e-9);
  const tries = chains.flatMap((chain) => {
    const drawn = boundsOf(chain);
    const off = (wide: number, high: number): number => Math.abs(drawn.width - wide) + Math.abs(drawn.height - high);
    return [
      { isTurned: false, chain, off: off(width, height) },
      { isTurned: true, chain, off: off(height, width) },
    ];
  });
  return tries.reduce((nearest, each) => (each.off < nearest.off - 1e-6 ? each : nearest));
}

/** The cut outline of a piece on a page as it lies: the closed undashed path whose size is nearest to that of the piece. */
export const lyingOn = (page: ReadPage, piece: Size): readonly Vec2[] => found(page, piece).chain;

/** The same with its head at the top, turned back where the page has it turned a quarter. */
export function outlineOn(page: ReadPage, piece: Size): readonly Vec2[] {
  const { isTurned, chain } = found(page, piece);
  return isTurned ? chain.map(([x, y]): Vec2 => [-y, x]) : chain;
}
