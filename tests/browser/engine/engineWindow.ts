/** In the page: the first visible element of a selector that goes by a name; of any name where none is given. */
function find(selector: string, name?: string): HTMLElement | null {
  const plain = (text: string | null | undefined): string => (text ?? '').replace(/\s+/g, ' ').trim();
  const nameOf = (element: Element): string =>
    plain(
      element.getAttribute('aria-label') ??
        (element as HTMLInputElement).labels?.[0]?.textContent ??
        element.textContent,
    );
  const all = [...document.querySelectorAll<HTMLElement>(selector)];
  const seen = all.filter((element) => element.checkVisibility({ visibilityProperty: true }));
  return seen.find((element) => name === undefined || nameOf(element) === name) ?? null;
}

export type Plain = string | number | boolean | null | readonly Plain[];

/** Work for the page: it knows nothing but `find` and what it is given, and gives what JSON can hold, or a promise of that. */
export type PageWork<A extends readonly Plain[], T> = (seek: typeof find, ...given: A) => T | Promise<T>;

/** The script of a work, an expression. */
export const scriptOf = <A extends readonly Plain[], T>(work: PageWork<A, T>, given: A): string =>
  `(${work})(${[String(find), ...given.map((each) => JSON.stringify(each))].join(', ')})`;

export type PointerStep = readonly ['move', number, number] | readonly ['down'] | readonly ['up'];

/** A key by its name as KeyboardEvent.key has it. */
export type Key = string;

/** A window of a browser, whichever browser it is. */
export interface EngineWindow {
  /** Name and version of the browser. */
  readonly name: string;
  ask<A extends readonly Plain[], T>(work: PageWork<A, T>, ...given: A): Promise<T>;
  goTo(address: string): Promise<void>;
  resize(width: number, height: number): Promise<void>;
  /** Moves and presses a mouse, at places of the part in sight, CSS px. */
  point(steps: readonly PointerStep[]): Promise<void>;
  /** Presses keys one after the other, while others are held. */
  keys(keys: readonly Key[], held?: Key): Promise<void>;
  /** Does work in another window of the same browser, and comes back to this one. */
  elsewhere(work: () => Promise<void>): Promise<void>;
  close(): Promise<void>;
}
