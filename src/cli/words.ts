import { type ParseArgsConfig, parseArgs } from 'node:util';
import { badWord } from './badInput.ts';

export type Options = NonNullable<ParseArgsConfig['options']>;

/** The words of a command line, told apart: options with their values, and files. */
export class Words<O extends Options> {
  readonly files: readonly string[];
  readonly #values: Readonly<Record<string, unknown>>;

  /** @throws BadInput for an option that is none of `options`; the methods for a value that is not allowed */
  constructor(words: readonly string[], options: O) {
    const parsed = parseArgs({ args: [...words], options, allowPositionals: true, strict: false, tokens: true });
    this.files = parsed.positionals;
    this.#values = parsed.values;
    const names = Object.keys(options).map((name) => `--${name}`);
    for (const token of parsed.tokens)
      if (token.kind === 'option' && !Object.hasOwn(options, token.name))
        throw badWord(token.rawName, 'an unknown option', names.join(', '));
  }

  /** @throws BadInput where no file is named */
  someFiles(): readonly string[] {
    if (this.files.length === 0) throw badWord('(files)', 'no file', 'one or more job files, or -');
    return this.files;
  }

  has(option: keyof O & string): boolean {
    return this.#values[option] !== undefined;
  }

  /** The value of an option, null where it was not given. */
  text(option: keyof O & string): string | null {
    const value = this.#values[option];
    if (value === undefined) return null;
    if (typeof value !== 'string' || value === '') throw badWord(`--${option}`, 'nothing', 'a value after it');
    return value;
  }

  /** The value of an option that must be one of several, null where it was not given. */
  choice<T extends string>(option: keyof O & string, allowed: readonly T[]): T | null {
    const value = this.text(option);
    if (value === null) return null;
    const found = allowed.find((word) => word === value);
    if (found === undefined) throw badWord(`--${option}`, value, allowed.join(' or '));
    return found;
  }

  /** The value of an option that must be a number, null where it was not given. */
  number(option: keyof O & string, min: number, max: number, isWhole = false): number | null {
    const text = this.text(option);
    if (text === null) return null;
    const value = Number(text);
    if (value >= min && value <= max && (!isWhole || Number.isInteger(value))) return value;
    throw badWord(`--${option}`, text, `a ${isWhole ? 'whole ' : ''}number from ${min} to ${max}`);
  }
}
