import { defined } from '../../defined.ts';
import { type EngineWindow, type Key, type PointerStep, scriptOf } from './engineWindow.ts';

/** The commands of the protocol that are used here, as Marionette names them; over HTTP each has a path. */
type WebDriverCommand = keyof typeof PATHS;

/** W3C WebDriver (https://www.w3.org/TR/webdriver2/), 6.3 Endpoints: method and path after the session. */
export const PATHS = {
  Navigate: ['POST', '/url'],
  ExecuteAsyncScript: ['POST', '/execute/async'],
  PerformActions: ['POST', '/actions'],
  SetWindowRect: ['POST', '/window/rect'],
  GetWindowHandle: ['GET', '/window'],
  NewWindow: ['POST', '/window/new'],
  SwitchToWindow: ['POST', '/window'],
  CloseWindow: ['DELETE', '/window'],
} as const;

/** A browser that was started, with a session. */
export interface WebDriverSession {
  readonly name: string;
  send(command: WebDriverCommand, parameters?: object): Promise<unknown>;
  close(): Promise<void>;
}

/** 17.4.2 Keyboard actions: the letters that stand for keys without one. */
const KEY_LETTERS: Readonly<Record<Key, string>> = {
  Backspace: '\uE003',
  Tab: '\uE004',
  Enter: '\uE007',
  Shift: '\uE008',
  Control: '\uE009',
  Escape: '\uE00C',
  PageUp: '\uE00E',
  End: '\uE010',
  Home: '\uE011',
  ArrowUp: '\uE013',
  ArrowRight: '\uE014',
  ArrowDown: '\uE015',
  Delete: '\uE017',
};

const keyAction = (type: 'keyDown' | 'keyUp', key: Key) => ({ type, value: KEY_LETTERS[key] ?? key });

function pointerAction([kind, x, y]: PointerStep): object {
  // A few frames, as a hand takes them.
  if (kind === 'move')
    return { type: 'pointerMove', duration: 50, origin: 'viewport', x: Math.round(x), y: Math.round(y) };
  return { type: kind === 'down' ? 'pointerDown' : 'pointerUp', button: 0 };
}

/** The window of a browser that speaks WebDriver. */
export function webDriverWindow({ name, send, close }: WebDriverSession): EngineWindow {
  const act = (source: object): Promise<unknown> => send('PerformActions', { actions: [source] });
  const ask: EngineWindow['ask'] = async (work, ...given) => {
    const script = `const done = arguments[arguments.length - 1];
      (async () => ${scriptOf(work, given)})().then((value) => done({ value: value ?? null }), (error) => done({ error: String(error) }));`;
    const answer = await send('ExecuteAsyncScript', { script, args: [] });
    const { value, error } = answer as { readonly value: never; readonly error?: string };
    if (error !== undefined) throw new Error(error);
    return value;
  };
  return {
    name,
    ask,
    goTo: async (url) => void (await send('Navigate', { url })),
    async resize(width, height) {
      await send('SetWindowRect', { width, height });
      const [across, down] = await ask(() => [innerWidth, innerHeight] as const);
      // The window's own frame is not part of what a page sees.
      await send('SetWindowRect', { width: 2 * width - across, height: 2 * height - down });
    },
    point: async (steps) =>
      void (await act({
        type: 'pointer',
        id: 'mouse',
        parameters: { pointerType: 'mouse' },
        actions: steps.map(pointerAction),
      })),
    async keys(keys, held) {
      const presses = keys.flatMap((key) => [keyAction('keyDown', key), keyAction('keyUp', key)]);
      const actions = held === undefined ? presses : [keyAction('keyDown', held), ...presses, keyAction('keyUp', held)];
      await act({ type: 'key', id: 'keyboard', actions });
    },
    async elsewhere(work) {
      const here = await send('GetWindowHandle');
      // WebKit's driver waits for ever for a press in a tab that does not show.
      const { handle } = (await send('NewWindow', { type: 'window' })) as { readonly handle: string };
      await send('SwitchToWindow', { handle: defined(handle) });
      try {
        await work();
      } finally {
        await send('CloseWindow');
        await send('SwitchToWindow', { handle: here });
      }
    },
    close,
  };
}
