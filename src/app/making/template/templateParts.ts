import type { Drawing, Layer, PatternSource } from '../../../core/index.ts';
import type { TemplateSettings } from './readTemplate.ts';
import type { TemplateChoice } from './templateChoice.ts';

/** What every group of the template's fields works with. */
export interface TemplateParts {
  readonly choice: TemplateChoice;
  readonly choose: (change: Partial<TemplateChoice>) => void;
  readonly settings: TemplateSettings;
  /** What it is drawn from. */
  readonly source: PatternSource;
  readonly drawing: Drawing;
  readonly mirrored: boolean;
  /** Whether tracings are drawn, and no pattern. */
  readonly isTracing: boolean;
  /** Whether letters that it shows are still being fetched: a file would lack them. */
  readonly isLoading: boolean;
  readonly layers: readonly Layer[];
  /** What tells the files of this drawing from others of the job. */
  readonly variants: readonly string[];
}
