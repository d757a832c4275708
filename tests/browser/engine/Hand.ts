import { expect } from '@playwright/test';
import { defined } from '../../defined.ts';
import type { EngineWindow, Key } from './engineWindow.ts';

/** The slowest engine draws without a graphics card; on a busy machine it takes two minutes to make a model. */
const LIMIT = 60_000 * Number(process.env.SLOW ?? 1);

/** A page changes between two looks at it, so whatever is looked for is looked for again. */
export const soon = <T>(look: () => Promise<T>, message?: string, timeout = LIMIT) =>
  expect.poll(look, { intervals: [50, 50, 100, 100, 250], timeout, message });

/** A file that the page gave to the browser to save. */
export interface SavedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** In the page: where files go that it gives to the browser to save. */
interface WithSaved {
  saved?: { blob: Blob; name: string | null }[];
}

/** A maker at the page of any browser: sees what is visible, and works with mouse and keys. Elements by selector and name. */
export class Hand {
  constructor(readonly window: EngineWindow) {}

  /** Waits until something that the page says fits. */
  async sees(selector: string, words: RegExp | string, name?: string): Promise<void> {
    const said = soon(() => this.said(selector, name));
    await (typeof words === 'string' ? said.toContain(words) : said.toMatch(words));
  }

  /** What an element says, or holds; empty where none is. */
  said(selector: string, name = ''): Promise<string> {
    return this.window.ask(
      (seek, css, called) => {
        const element = seek(css, called || undefined);
        const text = element instanceof HTMLInputElement ? element.value : element?.textContent;
        return (text ?? '').replace(/\s+/g, ' ').trim();
      },
      selector,
      name,
    );
  }

  attribute(attribute: string, selector: string, name = ''): Promise<string | null> {
    return this.window.ask(
      (seek, wanted, css, called) => seek(css, called || undefined)?.getAttribute(wanted) ?? null,
      attribute,
      selector,
      name,
    );
  }

  async hasAttribute(attribute: string, value: RegExp, selector: string, name = ''): Promise<void> {
    await soon(async () => (await this.attribute(attribute, selector, name)) ?? '').toMatch(value);
  }

  /** Waits until something is seen. */
  isThere(selector: string, name = ''): Promise<void> {
    return soon(() => this.isSeen(selector, name), `${selector} ${name}`).toBe(true);
  }

  isGone(selector: string, name = ''): Promise<void> {
    return soon(() => this.isSeen(selector, name), `${selector} ${name}`).toBe(false);
  }

  private isSeen(selector: string, name: string): Promise<boolean> {
    return this.window.ask((seek, css, called) => seek(css, called || undefined) !== null, selector, name);
  }

  /** The middle of an element, once it stands still and a press there reaches it. */
  async middle(selector: string, name = ''): Promise<readonly [number, number]> {
    let last: readonly [number, number] | null = null;
    const stands = async (): Promise<string> => {
      const now = await this.window.ask(
        (seek, css, called) => {
          const element = seek(css, called || undefined);
          if (element === null) return 'not to be seen';
          if (element.matches(':disabled')) return 'not to be used yet';
          element.scrollIntoView({ block: 'center', inline: 'nearest', behavior: 'instant' });
          const { x, y, width, height } = element.getBoundingClientRect();
          const [across, down] = [x + width / 2, y + height / 2];
          const hit = document.elementFromPoint(across, down);
          const isHit = hit !== null && (element.contains(hit) || hit.contains(element));
          return isHit ? [across, down] : `covered by ${hit?.tagName} ${hit?.getAttribute('class')}`;
        },
        selector,
        name,
      );
      if (typeof now === 'string') return now;
      const [x, y] = now as [number, number];
      const isStill = last !== null && Math.hypot(x - last[0], y - last[1]) < 0.5;
      last = [x, y];
      return isStill ? 'still' : 'moving';
    };
    await soon(stands, `${selector} ${name}`).toBe('still');
    return defined(last);
  }

  async press(selector: string, name = ''): Promise<void> {
    await this.window.point([['move', ...(await this.middle(selector, name))], ['down'], ['up']]);
  }

  /** Types a text in place of what stands in a field. */
  async type(text: string, selector: string, name = ''): Promise<void> {
    await this.press(selector, name);
    await this.window.keys(['a'], 'Control');
    await this.window.keys([...(text === '' ? ['Delete'] : text)]);
  }

  /** Moves a handle by its tab. */
  async drag(selector: string, [dx, dy]: readonly [number, number]): Promise<void> {
    const [x, y] = await this.middle(selector);
    await this.window.point([
      ['move', x, y],
      ['down'],
      ['move', x + dx / 3, y + dy / 3],
      ['move', x + (2 * dx) / 3, y + (2 * dy) / 3],
      ['move', x + dx, y + dy],
      ['up'],
    ]);
  }

  /** Puts the focus on something and presses keys there. */
  async keysOn(keys: readonly Key[], selector: string, name = ''): Promise<void> {
    await soon(() =>
      this.window.ask(
        (seek, css, called) => {
          const element = seek(css, called || undefined);
          element?.focus();
          return element !== null && element === document.activeElement;
        },
        selector,
        name,
      ),
    ).toBe(true);
    await this.window.keys(keys);
  }

  /** Chooses of a list, whose own window no test can reach. */
  async choose(value: string, selector: string, name = ''): Promise<void> {
    await this.middle(selector, name);
    await this.window.ask(
      (seek, chosen, css, called) => {
        const list = seek(css, called || undefined) as HTMLSelectElement;
        list.value = chosen;
        list.dispatchEvent(new Event('change', { bubbles: true }));
      },
      value,
      selector,
      name,
    );
  }

  /** Gives a file to a field that asks for one. */
  async give(file: string, content: string, selector: string): Promise<void> {
    await this.window.ask(
      (_, name, text, css) => {
        const field = document.querySelector<HTMLInputElement>(css)!;
        const given = new DataTransfer();
        given.items.add(new File([text], name, { type: 'application/json' }));
        field.files = given.files;
        field.dispatchEvent(new Event('change', { bubbles: true }));
      },
      file,
      content,
      selector,
    );
  }

  /** The file that the page saves while something is done. It is taken before the browser asks where to put it. */
  async saved(work: () => Promise<void>): Promise<SavedFile> {
    await this.window.ask(() => {
      const holder = window as WithSaved;
      if (holder.saved === undefined) {
        const own = URL.createObjectURL;
        URL.createObjectURL = (blob: Blob) => {
          holder.saved?.push({ blob, name: null });
          return own.call(URL, blob);
        };
        const click = HTMLAnchorElement.prototype.click;
        HTMLAnchorElement.prototype.click = function (this: HTMLAnchorElement) {
          const file = holder.saved?.at(-1);
          if (this.download === '' || file === undefined) click.call(this);
          else file.name = this.download;
        };
      }
      holder.saved = [];
    });
    await work();
    const name = () =>
      this.window.ask(() => (window as WithSaved).saved?.find(({ name }) => name !== null)?.name ?? '');
    await soon(name, 'a file is saved', 4 * LIMIT).not.toBe('');
    const base64 = await this.window.ask(
      () =>
        new Promise<string>((resolve, reject) => {
          const file = (window as WithSaved).saved?.find(({ name }) => name !== null);
          const reader = new FileReader();
          reader.onload = () => resolve(String(reader.result).replace(/^[^,]*,/, ''));
          reader.onerror = () => reject(reader.error);
          reader.readAsDataURL(file!.blob);
        }),
    );
    return { name: await name(), bytes: Uint8Array.from(Buffer.from(base64, 'base64')) };
  }
}
