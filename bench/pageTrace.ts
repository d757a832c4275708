import type { CDPSession } from '@playwright/test';

/** An event of Chromium's trace: `ts` and `dur` by the wall, `tts` and `tdur` by the thread's own clock, all in µs. */
export interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur: number;
  readonly tts: number;
  readonly tdur: number;
  readonly args: { readonly data?: { readonly type?: string }; readonly name?: string };
}

const CATEGORIES = ['toplevel', 'devtools.timeline', 'disabled-by-default-devtools.timeline', 'blink.user_timing'];

/** Traces what the page does meanwhile. */
export async function traced(session: CDPSession, act: () => Promise<void>): Promise<Trace> {
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: CATEGORIES },
  });
  await act();
  await session.send('Tracing.end');
  await complete;
  return new Trace(events);
}

/** Steps of the browser in which a changed page is drawn. */
const RENDERING = ['UpdateLayoutTree', 'Layout', 'PrePaint', 'Paint', 'Layerize', 'Commit'];

/** What happened on the page's main thread, and on the one that draws for the graphics card or in place of one. */
export class Trace {
  /** Tasks of the main thread. */
  readonly tasks: readonly TraceEvent[];
  /** Style, layout and paint, each once where one holds another. */
  readonly rendering: readonly TraceEvent[];
  /** Callbacks before a frame; in this app they are all the scene's. */
  readonly sceneFrames: readonly TraceEvent[];
  readonly main: readonly TraceEvent[];
  readonly #drawing: readonly TraceEvent[];

  constructor(events: readonly TraceEvent[]) {
    const page = events.find((event) => event.name === 'EventDispatch');
    if (page === undefined) throw new Error('The trace holds no event of the page.');
    const sorted = [...events].sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
    const on = ({ pid, tid }: { pid: number; tid: number }) =>
      // An event that was still going on when the trace ended has no duration.
      sorted.filter(
        (event) => event.pid === pid && event.tid === tid && (event.ph !== 'X' || event.tdur !== undefined),
      );
    this.main = on(page);
    this.tasks = this.named('RunTask');
    this.sceneFrames = this.named('FireAnimationFrame');
    this.rendering = RENDERING.flatMap((name) => this.named(name))
      .sort((a, b) => a.ts - b.ts || b.dur - a.dur)
      .filter(
        (event, i, all) => !all.slice(Math.max(0, i - 8), i).some(({ ts, dur }) => ts + dur >= event.ts + event.dur),
      );
    const card = events.find(({ name, args }) => name === 'thread_name' && args.name === 'CrGpuMain');
    this.#drawing = card === undefined ? [] : on(card).filter(({ name, ph }) => name === 'RunTask' && ph === 'X');
  }

  named(wanted: string): readonly TraceEvent[] {
    return this.main.filter(({ name, ph }) => name === wanted && ph === 'X');
  }

  dispatched(type: string): readonly TraceEvent[] {
    return this.named('EventDispatch').filter(({ args }) => args.data?.type === type);
  }

  /** How long the drawing thread was busy between two times, µs by the wall. */
  drawingTime(from: number, to: number): number {
    return this.#drawing.reduce(
      (total, { ts, dur }) => total + Math.max(0, Math.min(to, ts + dur) - Math.max(from, ts)),
      0,
    );
  }
}

/** Value below which a share of the samples lies. */
export function quantile(samples: readonly number[], share: number): number {
  const sorted = [...samples].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}
