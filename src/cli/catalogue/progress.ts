import type { Terminal } from '../terminal.ts';

/** Least time between two redrawings, ms. */
const BETWEEN = 200;

/** Shows on the screen how far a run is: rows, rows a second, and the time left where the size of the input is known. */
export class Progress {
  readonly #terminal: Terminal;
  readonly #rowsBefore: number;
  readonly #begun = performance.now();
  #next = 0;

  /** @param rowsBefore rows done by a run before */
  constructor(terminal: Terminal, rowsBefore: number) {
    this.#terminal = terminal;
    this.#rowsBefore = rowsBefore;
  }

  /**
   * Shows it, but not oftener than can be read.
   * @param rows done so far
   * @param share how much of the input has been read, 0 to 1; null where that is not known
   */
  async show(rows: number, share: number | null): Promise<void> {
    const now = performance.now();
    if (now < this.#next) return;
    this.#next = now + BETWEEN;
    await this.#terminal.showStatus(progressLine(rows, rows - this.#rowsBefore, (now - this.#begun) / 1000, share));
  }
}

/**
 * How far a run is, in a line shorter than a screen is wide.
 * @param rows done so far
 * @param here those of them done by this run
 * @param seconds since it began
 * @param share how much of the input these rows are, 0 to 1; null where that is not known
 */
export function progressLine(rows: number, here: number, seconds: number, share: number | null): string {
  const whole = (value: number) => Math.round(value).toLocaleString('en');
  const rate = here / Math.max(seconds, 0.001);
  const line = `${whole(rows)} rows, ${whole(rate)} a second`;
  if (share === null || share === 0 || rate === 0) return line;
  return `${line}, about ${timeWords((rows * (1 - share)) / share / rate)} left`;
}

function timeWords(seconds: number): string {
  if (seconds < 100) return `${Math.ceil(seconds)} s`;
  const minutes = Math.round(seconds / 60);
  return minutes < 100 ? `${minutes} min` : `${Math.round(minutes / 60)} h`;
}
