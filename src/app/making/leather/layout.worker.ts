import {
  type Clearance,
  type Hide,
  type Layout,
  layOut,
  layoutFaults,
  type PieceOutline,
} from '../../../core/index.ts';
import { serveQuestions } from '../../worker/serveQuestions.ts';

export interface LayoutQuestion {
  readonly outlines: readonly PieceOutline[];
  readonly hide: Hide;
  readonly clearance: Clearance;
}

export interface LayoutAnswer {
  readonly layout: Layout;
  /** Rules that the layout breaks; none for a sound one. */
  readonly faults: readonly string[];
}

serveQuestions<LayoutQuestion, LayoutAnswer>(({ outlines, hide, clearance }) => {
  const layout = layOut(outlines, hide, clearance);
  return { layout, faults: layoutFaults(layout, outlines, hide, clearance) };
});
