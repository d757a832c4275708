import type { Vec2 } from '../../src/core/math/vec2.ts';
import { nth } from '../nth.ts';
import { boundsOf } from './outlineDistance.ts';
import type { ReadPage } from './pdfReading.ts';

/** Pages of a template that carry a piece, recognised by the words at their foot. */
export const pagesOf = (pages: readonly ReadPage[], name: string, title = 'Tide ledger'): ReadPage[] =>
  pages.filter(({ words }) =>
    words
      .map(({ text }) => text)
      .join('')
      .includes(`${title}: ${name}, cut`),
  );

/** The cut outline on a page: the widest closed undashed path. */
export function outlineOn({ paths }: ReadPage): readonly Vec2[] {
  const chains = paths
    .filter(({ isDashed, lineWidth }) => !isDashed && Math.abs(lineWidth - 0.3) < 1e-3)
    .flatMap(({ chains }) => chains)
    .filter((chain) => Math.hypot(nth(chain, 0)[0] - nth(chain, -1)[0], nth(chain, 0)[1] - nth(chain, -1)[1]) < 1e-9);
  const size = (chain: readonly Vec2[]): number => boundsOf(chain).width * boundsOf(chain).height;
  return chains.reduce((largest, chain) => (size(chain) > size(largest) ? chain : largest));
}
