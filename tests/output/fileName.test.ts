import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fileName } from '../../src/output/fileName.ts';
import { checkLaw } from '../laws.ts';

const bytes = (text: string): number => new TextEncoder().encode(text).length;

describe('the name of a saved file', () => {
  test.each([
    ['Tide ledger: 2nd / Größe', [], 'job.json', 'tide-ledger-2nd-größe.job.json'],
    ['Tide ledger', ['card'], 'svg', 'tide-ledger-card.svg'],
    ['Tide ledger', ['leather', 'mirrored', 'kerf 0.2 mm'], 'dxf', 'tide-ledger-leather-mirrored-kerf-0.2-mm.dxf'],
    ['Βιβλίο της θάλασσας', ['A4'], 'template.pdf', 'βιβλίο-της-θάλασσας-a4.template.pdf'],
    // Accents may come as marks of their own (NFD).
    ['Sổ thủy triều'.normalize('NFD'), [], 'pdf', `${'sổ-thủy-triều'.normalize('NFC')}.pdf`],
    [' ?! ', ['card'], 'dxf', 'untitled-cover-card.dxf'],
    ['', [], 'dxf', 'untitled-cover.dxf'],
    // Device names that one file system reserves, whatever the ending.
    ['CON', [], 'job.json', 'con-cover.job.json'],
    ['Lpt1', [], 'svg', 'lpt1-cover.svg'],
  ])('%j %j as %s is %s', (name, variants, ending, expected) => {
    expect(fileName(name, ending, variants)).toBe(expected);
  });

  test('without a job name says so', () => {
    expect(fileName(undefined, 'svg')).toBe('untitled-cover.svg');
    expect(fileName(7, 'svg')).toBe('7.svg');
  });

  test('of 170 letters keeps its variants and its ending, and is cut between letters', () => {
    const name = fileName('Ψ'.repeat(170), 'template.pdf', ['card', 'mirrored']);
    expect(name).toMatch(/^ψ+-card-mirrored\.template\.pdf$/);
    expect(bytes(name)).toBeGreaterThan(116);
    expect(bytes(name)).toBeLessThanOrEqual(120);
  });

  test('never separates a letter from its marks', () => {
    // Devanagari: a consonant with its vowel sign is one letter to a reader, two code points, six bytes.
    const name = fileName('कि'.repeat(40), 'svg', ['leather']);
    expect(name).toMatch(/^(कि)+-leather\.svg$/u);
  });

  test('of any job name is 1 to 120 bytes of letters, digits, hyphens and points, and differs for every variant', () => {
    const text = fc.string({ unit: 'binary', maxLength: 300 });
    checkLaw(
      fc.property(text, fc.subarray(['card', 'mirrored', 'kerf 0.25 mm', 'roll 610 mm']), (job, variants) => {
        const name = fileName(job, 'template.pdf', variants);
        expect(bytes(name)).toBeLessThanOrEqual(120);
        expect(name).toMatch(/^[\p{L}\p{M}\p{N}][\p{L}\p{M}\p{N}.-]*\.template\.pdf$/u);
        expect(name).toBe(name.normalize('NFC'));
        for (const more of ['inches', 'kerf 0.26 mm'])
          expect(fileName(job, 'template.pdf', [...variants, more])).not.toBe(name);
      }),
    );
  });
});
