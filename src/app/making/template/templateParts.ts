import type { Layer } from '../../../core/index.ts';
import type { DrawnTemplate } from '../../../output/template/drawnTemplate.ts';
import type { TemplateSettings } from './readTemplate.ts';
import type { TemplateChoice } from './templateChoice.ts';

/** What every group of the template's fields works with. */
export interface TemplateParts extends DrawnTemplate {
  readonly choice: TemplateChoice;
  readonly choose: (change: Partial<TemplateChoice>) => void;
  readonly settings: TemplateSettings;
  /** Whether letters that it shows are still being fetched: a file would lack them. */
  readonly isLoading: boolean;
  readonly layers: readonly Layer[];
}
