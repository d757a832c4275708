import { type Reading, refusal } from './reading.ts';

/**
 * Reads a colour as it is written for the web: `#8f5b3a` or `#85a` (CSS Color Module Level 4, section 5.2), in capitals too and
 * without the sign.
 * @returns `#rrggbb` in small letters
 */
export function parseColour(text: string): Reading<string> {
  const [, digits] = /^#?([\da-f]{3}|[\da-f]{6})$/i.exec(text.trim()) ?? [];
  if (digits === undefined)
    return refusal(text, 'a colour', 'Write two figures or letters each for red, green and blue, as #8f5b3a.');
  const value = `#${(digits.length === 3 ? digits.replace(/./g, '$&$&') : digits).toLowerCase()}`;
  return { ok: true, value, understood: value };
}
