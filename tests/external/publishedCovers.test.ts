import { join } from 'node:path';
import { expect, test } from 'vitest';
import { run } from '../cli/commandLine.ts';

/**
 * Sizes of covers that makers published, each read again on 28 November 2026 in stored copies of its page:
 * 3 instructables.com, Easy Leather Passport Cover; 4 woodandfaulk.com, hand sewn passport cover (the size of a passport is that of 3, ICAO);
 * 5 adamsleatherworks.com, basic leather journal cover; 6 structables (a mirror of instructables.com), Leather Moleskine Journal Cover;
 * 12 doit-myself.com, journal cover making; 18 miapom.net, lifi note cover 1.
 *
 * Seven more of an earlier list were not found again and are left out: dodson-designs.com, westaa.hatenablog.com, songofthepaddle.co.uk,
 * bepal.net, koyuki-craft.com, marthastewart.com and the cover at paperpensink.blogspot.com.
 *
 * None of these pages says what the gaps came to, so the cut heights are compared with what the tool would cut: the difference holds how loose
 * each maker wanted it. A finding, to which nothing is tuned: bias -0.3 mm, RMS 3.3 mm, 1 of 5 within the stated 95 in 100, for what is
 * stated is the doubt of one cover and not how makers differ.
 */
test('published covers are as high as the tool would cut them, within what the trade allows at head and tail', async () => {
  const { status, stdout } = await run('validate', [join(import.meta.dirname, 'published-covers.csv'), '--to', 'csv']);
  expect(status).toBe(0);
  const rows = stdout
    .trim()
    .split(/\r?\n/)
    .map((row) => row.split(','));
  const lengths = rows.filter(([row]) => row === 'length');
  expect(lengths.map(([, cover, , of]) => `${cover} ${of}`)).toEqual([3, 4, 5, 6, 12].map((id) => `${id} cut height`));
  // 3/8 in at head and tail: the usual allowance, as in the check book of the job's document.
  const rms = Number(rows.find(([row]) => row === 'all')?.[8]);
  expect(rms).toBeGreaterThan(0);
  expect(rms).toBeLessThan((3 / 8) * 25.4);
});
