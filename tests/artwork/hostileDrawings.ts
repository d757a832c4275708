import { zipSync, zlibSync } from 'fflate';
import jpeg from 'jpeg-js';
import { PNG } from 'pngjs';
import { nth } from '../nth.ts';

/** A file that someone could send to harm or stop the tool, or a broken one. */
export interface HostileDrawing {
  /** Its family, with the number of the case. */
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Whether it must be refused, must be taken (less what is hostile), or may be either. */
  readonly outcome: 'refused' | 'taken' | 'either';
}

/** What would show that something of a file got through: a page that runs it sets it, an answer that has it quotes it. */
export const PAYLOAD = 'ran_by_a_drawing';
/** Where a hostile file would fetch from: an address for documents (RFC 5737), which no server has. */
export const ELSEWHERE = 'http://192.0.2.1/beacon';

/** Numbers from 0 up to 1, the same for the same seed (Lehmer's generator, Park and Miller 1988). */
function numbersFrom(seed: number): () => number {
  let state = (seed * 7919 + 17) % 2_147_483_647;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

type Random = () => number;
type Made = { readonly content: string | Uint8Array; readonly outcome: HostileDrawing['outcome'] };
type Family = (random: Random) => Made;

const whole = (random: Random, from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
const one = <T>(random: Random, all: readonly T[]): T => nth(all, whole(random, 0, all.length - 1));

const RUN = `window.${PAYLOAD}=1;globalThis.${PAYLOAD}=1`;

/** A shape that is a clean drawing by itself. */
const shape = (random: Random): string => {
  const [x, y, size] = [whole(random, 0, 40), whole(random, 0, 40), whole(random, 5, 50)];
  return one(random, [
    `<path d="M${x} ${y}h${size}v${size}z"/>`,
    `<circle cx="${x + 30}" cy="${y + 30}" r="${size / 2}"/>`,
    `<polyline points="${x},${y} ${x + size},${y} ${x},${y + size}" fill="none" stroke="red"/>`,
  ]);
};

const svg = (body: string, before = '', attributes = ''): string =>
  `${before}<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 100 100" ${attributes}>${body}</svg>`;

const taken = (content: string): Made => ({ content, outcome: 'taken' });
const refused = (content: string | Uint8Array): Made => ({ content, outcome: 'refused' });
const either = (content: string | Uint8Array): Made => ({ content, outcome: 'either' });

const href = (random: Random): string => one(random, ['href', 'xlink:href', 'src', 'xlink:HREF']);
const evil = (random: Random): string =>
  one(random, [
    `javascript:${RUN}`,
    `JaVaScRiPt:${RUN}`,
    ` &#106;avascript:${RUN}`,
    `java&#10;script:${RUN}`,
    `data:text/html,&lt;script>${RUN}&lt;/script>`,
    `data:image/svg+xml;base64,${btoa(svg(`<script>${RUN}</script>`))}`,
    ELSEWHERE,
    `${ELSEWHERE}#a`,
    `//192.0.2.1/a.svg#b`,
    'file:///etc/passwd',
    'blob:null/1',
  ]);

const element = (random: Random): string =>
  one(random, ['path', 'g', 'svg', 'image', 'animate', 'a', 'foreignObject', 'use', 'text', 'body', 'iframe']);

const repeated = (times: number, of: (i: number) => string): string =>
  Array.from({ length: times }, (_, i) => of(i)).join('');

/** Levels of definitions of which each names the one before ten times. */
const laughs = (levels: number, wide: number): string =>
  `<!DOCTYPE svg [<!ENTITY l0 "lol">${repeated(levels, (i) => `<!ENTITY l${i + 1} "${`&l${i};`.repeat(wide)}">`)}]>`;

const DRAWINGS: Readonly<Record<string, Family>> = {
  'script inside': (r) =>
    taken(
      svg(`<script type="${one(r, ['text/javascript', 'module', '', 'text/ecmascript'])}">${RUN}</script>${shape(r)}`),
    ),
  'script outside': (r) => taken(svg(`<script ${href(r)}="${evil(r)}"/>${shape(r)}`)),
  'script in CDATA': (r) =>
    taken(svg(`<script><![CDATA[${RUN}//]]></script><![CDATA[<script>${RUN}</script>]]>${shape(r)}`)),
  'script of another namespace': (r) =>
    taken(
      svg(
        `<h:script xmlns:h="http://www.w3.org/1999/xhtml">${RUN}</h:script><svg:script xmlns:svg="http://www.w3.org/2000/svg">${RUN}</svg:script>${shape(r)}`,
      ),
    ),
  'event attribute': (r) =>
    taken(
      svg(
        `<path ${one(r, ['onload', 'onclick', 'onerror', 'onbegin', 'onfocusin', 'ONLOAD'])}="${RUN}" d="M0 0h9"/>${shape(r)}`,
        '',
        `onload="${RUN}"`,
      ),
    ),
  'entities, a billion laughs': (r) =>
    either(svg(`<text>&l${9};</text><path d="&l9;"/>${shape(r)}`, laughs(9, whole(r, 8, 12)))),
  'entity, quadratic': (r) =>
    either(
      svg(
        `<text>${'&a;'.repeat(whole(r, 100, 3000))}</text>${shape(r)}`,
        `<!DOCTYPE svg [<!ENTITY a "${'x'.repeat(whole(r, 1000, 50_000))}">]>`,
      ),
    ),
  'entity of a file': (r) =>
    either(
      svg(
        `<text>&a;</text>${shape(r)}`,
        `<!DOCTYPE svg [<!ENTITY a SYSTEM "${one(r, ['file:///etc/passwd', ELSEWHERE, 'php://filter'])}">]>`,
      ),
    ),
  'parameter entity': (r) => either(svg(shape(r), `<!DOCTYPE svg [<!ENTITY % a SYSTEM "${ELSEWHERE}"> %a; %b;]>`)),
  'DOCTYPE from elsewhere': (r) =>
    either(svg(shape(r), `<!DOCTYPE svg ${one(r, ['SYSTEM', 'PUBLIC "-//X//Y"'])} "${ELSEWHERE}.dtd">`)),
  'style sheet named': (r) =>
    taken(
      svg(
        shape(r),
        `<?xml version="1.0"?><?xml-stylesheet type="${one(r, ['text/css', 'text/xsl'])}" href="${ELSEWHERE}"?>`,
      ),
    ),
  'style sheet inside': (r) =>
    taken(
      svg(`<style>@import url(${ELSEWHERE});*{background:url("${ELSEWHERE}");behavior:url(#x)}</style>${shape(r)}`),
    ),
  'address in style': (r) =>
    taken(
      svg(
        `<path d="M0 0h9v9" style="fill:url(${ELSEWHERE}#a);filter:url('${ELSEWHERE}')" mask="url(${ELSEWHERE}#m)"/>${shape(r)}`,
      ),
    ),
  'picture inside': (r) =>
    taken(svg(`<image ${href(r)}="${evil(r)}" width="9" height="9"/><feImage ${href(r)}="${evil(r)}"/>${shape(r)}`)),
  'foreign content': (r) =>
    taken(
      svg(
        `<foreignObject width="99" height="99"><iframe xmlns="http://www.w3.org/1999/xhtml" src="${evil(r)}" srcdoc="&lt;script>${RUN}&lt;/script>"/><img src="${ELSEWHERE}" onerror="${RUN}"/></foreignObject>${shape(r)}`,
      ),
    ),
  animation: (r) =>
    taken(
      svg(
        `<a id="a"><${one(r, ['set', 'animate', 'animateTransform'])} attributeName="${href(r)}" to="${evil(r)}" begin="0s"/><rect width="9" height="9"/></a>${shape(r)}`,
      ),
    ),
  link: (r) => taken(svg(`<a ${href(r)}="${evil(r)}" target="_blank">${shape(r)}</a>`)),
  'reference outside': (r) => taken(svg(`<use ${one(r, ['href', 'xlink:href'])}="${evil(r)}"/>${shape(r)}`)),
  'base elsewhere': (r) => taken(svg(`<use href="#a"/>${shape(r)}`, '', `xml:base="${ELSEWHERE}"`)),
  'reference loop': (r) => {
    // Longer ones draw each other more often than is allowed.
    const length = whole(r, 1, 6);
    return taken(
      svg(
        repeated(
          length,
          (i) => `<g id="n${i}"><use href="#n${(i + 1) % length}"/><use href="#n${(i + 1) % length}"/></g>`,
        ) + shape(r),
      ),
    );
  },
  'references that multiply': (r) =>
    refused(
      svg(
        repeated(whole(r, 7, 14), (i) =>
          i === 0 ? `<g id="u0">${shape(r)}</g>` : `<g id="u${i}">${`<use href="#u${i - 1}"/>`.repeat(10)}</g>`,
        ),
      ),
    ),
  'pattern and marker of themselves': (r) =>
    taken(
      svg(
        `<pattern id="p" fill="url(#p)"><rect fill="url(#p)" width="9" height="9"/></pattern><marker id="m"><path marker-end="url(#m)" d="M0 0h9"/></marker><path d="M0 0h9v9" fill="url(#p)" marker-end="url(#m)"/>${shape(r)}`,
      ),
    ),
  'nested deep': (r) => {
    const depth = whole(r, 100, 100_000);
    return refused(svg('<g>'.repeat(depth) + shape(r) + '</g>'.repeat(depth)));
  },
  'many elements': (r) => refused(svg('<g/>'.repeat(whole(r, 50_000, 200_000)))),
  'many attributes': (r) =>
    either(svg(`<path d="M0 0h9" ${repeated(whole(r, 100, 5000), (i) => `a${i}="${i}" `)}/>${shape(r)}`)),
  'huge numbers': (r) =>
    taken(
      svg(
        `<path d="M0 0L1e${whole(r, 10, 400)} 5"/><circle r="1e${whole(r, 10, 400)}"/><path transform="scale(1e308) scale(1e308)" d="M1 1h1"/>${shape(r)}`,
      ),
    ),
  'not numbers': (r) =>
    taken(
      svg(
        `<path d="M0 0L${one(r, ['NaN', 'Infinity', '-Infinity', '0x10', '1e', '--1', 'undefined', '٣'])} 5"/><rect width="NaN" height="Infinity"/><circle r="-1e400"/><path transform="matrix(NaN 0 0 0 0 0)" d="M0 0h1"/>${shape(r)}`,
      ),
    ),
  'singular transforms': (r) =>
    taken(
      svg(
        `${'<g transform="scale(0)">'.repeat(20)}<path d="M0 0h9"/>${'</g>'.repeat(20)}<g transform="${'rotate(1) '.repeat(whole(r, 10, 3000))}"><path d="M0 0h0"/></g>${shape(r)}`,
      ),
    ),
  'path of junk': (r) =>
    taken(
      svg(
        `<path d="M0 0h9${repeated(whole(r, 10, 100_000), () => one(r, ['z', 'M', ' ', ',', '-', 'e', '.', '0', 'a', 'Q']))}"/>${shape(r)}`,
      ),
    ),
  'long path of one command': (r) => either(svg(`<path d="M0 0${' 1 1'.repeat(whole(r, 1000, 300_000))}"/>`)),
  'prototype names': (r) =>
    taken(
      svg(
        `<g id="__proto__"/><g id="constructor"/><path __proto__="x" constructor="y" d="M0 0h9"/><use href="#__proto__"/><use href="#toString"/><toString/><hasOwnProperty/>${shape(r)}`,
      ),
    ),
  'cut short': (r) => {
    const text = svg(shape(r) + shape(r));
    return refused(text.slice(0, whole(r, 0, text.length - 2)));
  },
  'comment left open': (r) => refused(svg(`<!-- ${shape(r)}`)),
  'attribute twice': (r) => refused(svg(`<path d="M0 0h9" d="${RUN}"/>${shape(r)}`)),
  'zero bytes': (r) => refused(svg(`<path d="M0\u0000 0h9"/>${shape(r)}`)),
  HTML: (r) =>
    refused(`<!DOCTYPE html><html><body onload="${RUN}">${svg(shape(r))}<script>${RUN}</script></body></html>`),
  'UTF-16 with a script': (r) => {
    const text = svg(`<script>${RUN}</script>${shape(r)}`, one(r, ['', '<?xml version="1.0" encoding="UTF-16"?>']));
    const isLittle = r() < 0.5;
    const bytes = Uint8Array.from(
      [0xfeff, ...Array.from(text, (letter) => letter.charCodeAt(0))].flatMap((code) =>
        isLittle ? [code & 255, code >> 8] : [code >> 8, code & 255],
      ),
    );
    // Without its mark it is no text that begins as XML does.
    return r() < 0.5 ? { content: bytes, outcome: 'taken' } : refused(bytes.subarray(2));
  },
  'other encodings': (r) =>
    either(
      `<?xml version="1.0" encoding="${one(r, ['UTF-7', 'EBCDIC', 'ISO-2022-JP', 'x'])}"?>${svg(`+ADw-script+AD4-${RUN}+ADw-/script+AD4-${shape(r)}`)}`,
    ),
  'byte order mark and spaces': (r) =>
    either(`\ufeff${' \n\t'.repeat(whole(r, 0, 200))}${svg(`<script>${RUN}</script>${shape(r)}`)}`),
  'element within an attribute': (r) =>
    either(
      svg(
        `<path d="M0 0h9" id='"&gt;&lt;img src=x onerror=${RUN}&gt;'/><title>&lt;/title>&lt;script>${RUN}&lt;/script></title>${shape(r)}`,
      ),
    ),
  'any element with any address': (r) =>
    either(
      svg(
        repeated(
          whole(r, 1, 9),
          () => `<${element(r)} ${href(r)}="${evil(r)}" on${one(r, ['load', 'error'])}="${RUN}"/>`,
        ) + shape(r),
      ),
    ),
};

const picture = (random: Random): Uint8Array => {
  const [width, height] = [whole(random, 4, 40), whole(random, 4, 40)];
  const image = new PNG({ width, height });
  for (let i = 0; i < width * height; i++)
    image.data.set(random() < 0.5 ? [0, 0, 0, 255] : [255, 255, 255, 255], 4 * i);
  return Uint8Array.from(PNG.sync.write(image));
};

const photograph = (random: Random): Uint8Array => {
  const [width, height] = [whole(random, 8, 40), whole(random, 8, 40)];
  const data = Buffer.from(Array.from({ length: width * height * 4 }, () => whole(random, 0, 255)));
  return Uint8Array.from(jpeg.encode({ width, height, data }, 70).data);
};

const CRC = Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

/** A chunk of a PNG with its checksum (ISO/IEC 15948, 5.3 and annex D). */
function chunk(type: string, data: Uint8Array): number[] {
  const body = [...new TextEncoder().encode(type), ...data];
  const crc = ~body.reduce((c, byte) => nth(CRC, (c ^ byte) & 255) ^ (c >>> 8), -1);
  const word = (value: number) => [value >>> 24, (value >>> 16) & 255, (value >>> 8) & 255, value & 255];
  return [...word(data.length), ...body, ...word(crc)];
}

const MARK = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

function pngOf(width: number, height: number, ...chunks: number[][]): Uint8Array {
  const header = new Uint8Array(13);
  new DataView(header.buffer).setUint32(0, width);
  new DataView(header.buffer).setUint32(4, height);
  header[8] = 8;
  return Uint8Array.from([...MARK, ...chunk('IHDR', header), ...chunks.flat(), ...chunk('IEND', new Uint8Array())]);
}

const bomb = (bytes: number): Uint8Array => zlibSync(new Uint8Array(bytes), { level: 9 });

const joined = (...parts: Uint8Array[]): Uint8Array => Uint8Array.from(parts.flatMap((part) => [...part]));
const text = (words: string): Uint8Array => new TextEncoder().encode(words);

const PICTURES: Readonly<Record<string, Family>> = {
  'PNG of 100 megapixels and more': (r) =>
    refused(pngOf(whole(r, 10_000, 2_000_000_000), whole(r, 10_000, 2_000_000_000), chunk('IDAT', bomb(1000)))),
  'PNG that is long and thin': (r) => refused(pngOf(whole(r, 8001, 1_000_000), 1, chunk('IDAT', bomb(1000)))),
  'PNG of no size': (r) => refused(pngOf(0, whole(r, 0, 9), chunk('IDAT', bomb(1000)))),
  'PNG with a bomb for pixels': (r) => either(pngOf(4, 4, chunk('IDAT', bomb(whole(r, 1_000_000, 20_000_000))))),
  'PNG with a bomb for text': (r) =>
    either(
      pngOf(
        4,
        4,
        chunk('zTXt', joined(text('a\0\0'), bomb(whole(r, 1_000_000, 20_000_000)))),
        chunk('iCCP', joined(text('a\0\0'), bomb(5_000_000))),
        chunk('IDAT', zlibSync(new Uint8Array(20))),
      ),
    ),
  'PNG with fewer pixels than it says': (r) =>
    either(pngOf(whole(r, 100, 3000), whole(r, 100, 3000), chunk('IDAT', zlibSync(new Uint8Array(50))))),
  'PNG with a wrong header': (r) => {
    const bytes = picture(r);
    bytes[whole(r, 8, 15)] = whole(r, 16, 255);
    return either(bytes);
  },
  'PNG cut short': (r) => either(picture(r).subarray(0, whole(r, 8, 60))),
  'PNG changed at random': (r) => {
    const bytes = picture(r);
    for (let i = 0; i < 5; i++) bytes[whole(r, 8, bytes.length - 1)] = whole(r, 0, 255);
    return either(bytes);
  },
  'PNG followed by a page': (r) => either(joined(picture(r), text(`<html><script>${RUN}</script>`))),
  'JPEG of 65,535 by 65,535': (r) => {
    const bytes = photograph(r);
    const frame = bytes.findIndex((byte, i) => byte === 0xff && bytes[i + 1] === 0xc0);
    bytes.set([0xff, 0xff, 0xff, 0xff], frame + 5);
    return refused(bytes);
  },
  'JPEG of two frames': (r) => {
    const bytes = photograph(r);
    return refused(
      joined(
        bytes.subarray(0, 2),
        Uint8Array.from([0xff, 0xc2, 0, 11, 8, 0xff, 0xff, 0xff, 0xff, 1, 1, 0x11, 0]),
        bytes.subarray(2),
      ),
    );
  },
  'JPEG with a length of 0': (r) =>
    refused(joined(Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 0, whole(r, 0, 1)]), photograph(r))),
  'JPEG of fill bytes': (r) =>
    refused(new Uint8Array(whole(r, 100, 1_000_000)).fill(0xff).map((byte, i) => (i === 1 ? 0xd8 : byte))),
  'JPEG cut short': (r) => either(photograph(r).subarray(0, whole(r, 3, 400))),
  'JPEG changed at random': (r) => {
    const bytes = photograph(r);
    for (let i = 0; i < 5; i++) bytes[whole(r, 3, bytes.length - 1)] = whole(r, 0, 255);
    return either(bytes);
  },
  'JPEG followed by a page': (r) => either(joined(photograph(r), text(`*/=1;</script><script>${RUN}</script>`))),
  'other kinds': (r) =>
    refused(
      joined(
        one(r, [
          text(`GIF89a/*${'x'.repeat(20)}*/=1;${RUN}`),
          text('BM\0\0\0\0'),
          text('RIFF\0\0\0\0WEBPVP8 '),
          text('II*\0'),
          text(`%PDF-1.7 /JavaScript (${RUN})`),
          text('MZ\u0090'),
          text('#!/bin/sh\ncurl 192.0.2.1'),
          text(`{"svg": "${RUN}"}`),
          text(`${RUN} // <svg`),
        ]),
        text(svg(shape(r))),
      ),
    ),
  'packed SVG': (r) =>
    refused(
      one(r, [zipSync({ 'a.svg': text(svg(shape(r))) }), Uint8Array.from([0x1f, 0x8b, 8, 0, ...bomb(1_000_000)])]),
    ),
  'random bytes': (r) => either(Uint8Array.from({ length: whole(r, 0, 300) }, () => whole(r, 0, 255))),
  nothing: (r) => refused(one(r, ['', ' ', '\ufeff', '\n\n', '<'])),
};

const FAMILIES = Object.entries({ ...DRAWINGS, ...PICTURES });

/** Names that a file could have, its kind aside. */
const NAMES = [
  'a.svg',
  'a.png',
  '../../../etc/passwd',
  `"><script>${RUN}</script>.svg`,
  'con',
  '\u202egnp.svg',
  'x'.repeat(5000),
  '',
  '__proto__',
];

/** The hostile file of a number: one family after the other, each time with other values. */
export function hostileDrawing(index: number): HostileDrawing & { readonly file: string } {
  const [family, make] = nth(FAMILIES, index % FAMILIES.length);
  const random = numbersFrom(index + 1);
  const { content, outcome } = make(random);
  return {
    name: `${index}: ${family}`,
    bytes: typeof content === 'string' ? text(content) : content,
    outcome,
    file: one(random, NAMES),
  };
}

/** How many families there are: so many in a row have one of each. */
export const HOSTILE_FAMILIES = FAMILIES.length;
