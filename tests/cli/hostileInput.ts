import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { randomDraws } from '../../src/core/math/randomDraws.ts';
import { utf16 } from './commandLine.ts';

/** What a program that trusts its input falls over: as a cell, a value, a name. */
const NASTY = [
  '',
  ' ',
  '\u0000',
  '\ufeff',
  '\u202egnp.exe',
  '\u001b[2J\u001b[31m',
  '"',
  '""',
  "'; DROP TABLE books; --",
  '=HYPERLINK("http://x.example")',
  '<script>alert(1)</script>',
  '$(exit 9) %s %n',
  '../../../../etc/passwd',
  '__proto__',
  'constructor',
  'toString',
  'NaN',
  'Infinity',
  '-Infinity',
  '-0',
  '1e308',
  '1e309',
  '-1e-324',
  '0x10',
  '9007199254740993',
  '1,500',
  '8 1/0 in',
  '8 1/2 in',
  '4-5 oz',
  '5-4 oz',
  'null',
  'true',
  '[]',
  '{}',
  '[[[[[[',
  '\ud83d\ude00',
  'a\u0301\u0302\u0303',
  '\r',
  '\n',
  '\r\n',
  ',',
  ';',
  '\t',
  '1'.repeat(400),
  '½'.repeat(50),
  'x'.repeat(20_000),
  '((((((((((((((((((((((((((((((a',
];

const COLUMNS = [
  'name',
  'book.width_mm',
  'book.height_mm',
  'book.thickness_mm',
  'leather.outside',
  'leather.outside.min_mm',
  'leather.outside.max_mm',
  'book.kind',
  'book.spine.shape',
  'book.spine.rise_mm',
  'seam.method',
  'seam.pitch_mm',
  'pattern.outsideWidth_mm',
  'ease.head_mm',
  'finish.outside',
];

const JOBS = ['tide-ledger', 'choir-book', 'shore-guide'].map((name) =>
  readFileSync(join(import.meta.dirname, `../../public/jobs/${name}.json`), 'utf8'),
);

/** Draws of one hostile document. */
class Hostile {
  readonly #draw: () => number;

  constructor(seed: number) {
    this.#draw = randomDraws(seed);
  }

  below(count: number): number {
    return Math.floor(this.#draw() * count);
  }

  one<T>(list: readonly T[]): T {
    return list[this.below(list.length)] as T;
  }

  many<T>(most: number, make: () => T): T[] {
    return Array.from({ length: this.below(most + 1) }, make);
  }

  bytes(most: number): Buffer {
    return Buffer.from(this.many(most, () => this.below(256)));
  }

  /** Cuts, doubles, swaps and scratches pieces of a text. */
  damaged(text: Buffer): Buffer {
    let bytes = text;
    for (let times = 1 + this.below(4); times > 0; times--) {
      const [from, to] = [this.below(bytes.length + 1), this.below(bytes.length + 1)].sort((a, b) => a - b) as [
        number,
        number,
      ];
      const [before, piece, after] = [bytes.subarray(0, from), bytes.subarray(from, to), bytes.subarray(to)];
      bytes = Buffer.concat(
        this.one([
          [before, after],
          [before, piece, piece, after],
          [after, piece, before],
          [before, this.bytes(6), piece, after],
          [before, Buffer.from(this.one(NASTY)), after],
          [before, piece],
        ]),
      );
      // Doubled pieces doubled again would grow without end.
      bytes = bytes.subarray(0, 200_000);
    }
    return bytes;
  }

  /** In some encoding, by its mark or not. */
  encoded(text: string): Buffer {
    const plain = Buffer.from(text);
    return this.one([
      () => plain,
      () => plain,
      () => plain,
      () => Buffer.from(`\ufeff${text}`),
      () => Buffer.from(`\ufeff\ufeff${text}`),
      () => Buffer.from(text, 'latin1'),
      () => utf16(text, 'little'),
      () => utf16(text, 'big'),
      () => utf16(text, 'little').subarray(2),
      () => utf16(text, 'big').subarray(0, -1 - this.below(8)),
      () => this.damaged(utf16(text, 'little')),
      () => Buffer.concat([Buffer.from([0xff, 0xfe, 0, 0]), plain]),
    ])();
  }

  cell(): string {
    const text = this.one<() => string>([
      () => this.one(NASTY),
      () => String(this.below(400)),
      () => `${this.below(400)}.${this.below(1000)}`,
      () => this.bytes(12).toString('latin1'),
      () => this.one(NASTY) + this.one(NASTY),
    ])();
    return this.below(3) === 0 ? `"${this.below(4) === 0 ? text : text.replaceAll('"', '""')}"` : text;
  }

  soundTable(): string {
    const rows = this.many(8, () => `Book,${100 + this.below(150)},${150 + this.below(150)},${this.below(60)},4-5 oz`);
    return ['name,book.width_mm,book.height_mm,book.thickness_mm,leather.outside', ...rows, ''].join('\n');
  }

  table(): Buffer {
    const separator = this.one([',', ';', '\t']);
    const line = this.one(['\n', '\r\n', '\r']);
    return this.one<() => Buffer>([
      () => this.bytes(2000),
      () => this.damaged(Buffer.from(this.soundTable())),
      () => this.encoded(this.soundTable()),
      () => {
        const columns = this.many(9, () => (this.below(12) === 0 ? this.one(NASTY) : this.one(COLUMNS)));
        const rows = this.many(12, () => columns.map(() => this.cell()).join(separator));
        return this.encoded([[...new Set(columns)].join(separator), ...rows].join(line));
      },
      () => {
        const rows = this.many(12, () =>
          COLUMNS.slice(0, 5)
            .map(() => this.cell())
            .join(separator),
        );
        return Buffer.from([COLUMNS.slice(0, 5).join(separator), ...rows].join(line));
      },
      () => Buffer.from(this.many(3000, () => this.one(['"', '""', ',', '\n', '\r', 'a', ';'])).join('')),
      () =>
        Buffer.from(`name\n${this.one(['"', ',', '\n', '\r', '""', 'a', '"\n'] as const).repeat(this.below(150_000))}`),
      () => Buffer.from(`${this.many(5000, () => this.one(COLUMNS)).join(separator)}\n`),
    ])();
  }

  value(depth = 0): unknown {
    return this.one<() => unknown>([
      () => this.one(NASTY),
      () => (this.below(2000) - 1000) / this.one([1, 7, 1000, 1e-300]),
      () => this.one([null, true, false, -0, 1e308, -1e308, 5e-324, Number.MAX_SAFE_INTEGER]),
      () => (depth > 4 ? [] : this.many(5, () => this.value(depth + 1))),
      () =>
        depth > 4 ? {} : Object.fromEntries(this.many(5, () => [this.one(NASTY), this.value(depth + 1)] as const)),
      () => Array.from({ length: this.below(2000) }, () => this.below(300)),
      () => Array.from({ length: this.below(300) }, () => [this.below(300), this.below(300)]),
    ])();
  }

  /** Sets a value somewhere in a document, takes one out, or puts one in. */
  changed(document: unknown): unknown {
    const places: { readonly holder: Record<string, unknown>; readonly key: string }[] = [];
    const visit = (holder: unknown) => {
      if (typeof holder !== 'object' || holder === null) return;
      for (const key of Object.keys(holder)) {
        places.push({ holder: holder as Record<string, unknown>, key });
        visit((holder as Record<string, unknown>)[key]);
      }
    };
    visit(document);
    for (let times = 1 + this.below(3); times > 0; times--) {
      const { holder, key } = this.one(places);
      const was = holder[key];
      this.one([
        () => delete holder[key],
        () =>
          Object.defineProperty(holder, this.one(NASTY), { value: this.value(), enumerable: true, configurable: true }),
        () => {
          holder[key] = this.value();
        },
        () => {
          holder[key] = typeof was === 'number' ? was * this.one([-1, 0, 0.01, 0.5, 1.1, 2, 10, 1e9]) : this.value();
        },
        () => {
          holder[key] = typeof was === 'number' ? was * (0.5 + this.below(1000) / 1000) : was;
        },
      ])();
    }
    return document;
  }

  job(): Buffer {
    const text = this.one(JOBS);
    return this.one<() => Buffer>([
      () => this.bytes(1000),
      () => this.damaged(Buffer.from(text)),
      () => this.encoded(text),
      () => Buffer.from(JSON.stringify(this.changed(JSON.parse(text)))),
      () => Buffer.from(JSON.stringify(this.changed(JSON.parse(text)))),
      () => Buffer.from(JSON.stringify(this.changed(JSON.parse(text)))),
      () => Buffer.from(JSON.stringify(this.value())),
      () => Buffer.from(text.replace(/\d+/, this.one(['1e999', '-0', '01', '.5', '1'.repeat(5000), '"165"', 'NaN']))),
      () =>
        Buffer.from(this.one(['[', '{"a":', '"', '\\u', '[{"book":', '-', '\\'] as const).repeat(this.below(50_000))),
      () => Buffer.from(`{${this.many(3000, () => `${JSON.stringify(this.one(NASTY))}:1`).join(',')}}`),
    ])();
  }
}

/** The table of a number, the same one every time. */
export const hostileTable = (index: number): Buffer => new Hostile(2 * index + 1).table();

/** The job document of a number. */
export const hostileJob = (index: number): Buffer => new Hostile(2 * index + 2).job();
