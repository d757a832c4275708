import { type Drawing, mirroredDrawing } from '../../../core/index.ts';
import { pagePlan } from '../../../output/pdf/pagePlan.ts';
import type { Paper } from '../../../output/pdf/paper.ts';
import { type MeasuredBars, printerScale } from '../../../output/pdf/printerScale.ts';
import { crossedWords } from '../../../output/pdf/tiling.ts';

/** Pages that the template takes, and what is said of them: which pieces share one, what joints could not avoid. */
export interface TemplatePages {
  readonly pages: number;
  readonly notes: readonly string[];
}

export function templatePages(
  drawing: Drawing,
  paper: Paper,
  { bars, mirrored = false }: { readonly bars?: MeasuredBars | undefined; readonly mirrored?: boolean } = {},
): TemplatePages {
  const { pages, tiled } = pagePlan(mirrored ? mirroredDrawing(drawing) : drawing, paper, printerScale(bars));
  const shared = pages.flatMap(({ parts }, i) => {
    const names = [...new Set(parts.map(({ piece }) => piece.name))];
    return names.length < 2 ? [] : [`Page ${i + 1}: ${names.join(', ')}.`];
  });
  return {
    pages: pages.length,
    notes: [...shared, ...tiled.flatMap(({ piece, tiling }) => crossedWords(piece, tiling) ?? [])],
  };
}
