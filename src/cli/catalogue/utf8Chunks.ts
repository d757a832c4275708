import { MARK_BYTES, markOf } from '../decodeText.ts';

/** Text in UTF-16 that breaks off or holds half a character. */
export class DamagedText extends Error {}

/**
 * The bytes of a text in UTF-8 without its mark, whether its mark names UTF-8 or UTF-16. Bytes that are said to be UTF-8
 * are handed on as they are, unchecked.
 * @throws DamagedText
 */
export async function* utf8Chunks(input: AsyncIterable<Buffer, unknown, undefined>): AsyncGenerator<Buffer> {
  let start = Buffer.alloc(0);
  let decode: Decode | null = null;
  for await (const chunk of input) {
    if (decode !== null) {
      yield decode(chunk);
      continue;
    }
    start = Buffer.concat([start, chunk]);
    if (start.length < MARK_BYTES) continue;
    decode = decoder(start);
    yield decode(start.subarray(markOf(start).bytes.length));
  }
  decode ??= decoder(start);
  yield decode(null);
}

/** Takes the next bytes, or null at the end of the text. */
type Decode = (bytes: Buffer | null) => Buffer;

function decoder(start: Buffer): Decode {
  const { encoding } = markOf(start);
  if (encoding === 'utf-8') return (bytes) => bytes ?? Buffer.alloc(0);
  const utf16 = new TextDecoder(encoding, { fatal: true });
  return (bytes) => {
    try {
      return Buffer.from(bytes === null ? utf16.decode() : utf16.decode(bytes, { stream: true }));
    } catch {
      throw new DamagedText(encoding.toUpperCase());
    }
  };
}
