import { readFileSync } from 'node:fs';
import { deflateSync } from 'node:zlib';
import { LINK_DICTIONARIES } from '../../src/output/shareLink/linkDictionary.ts';
import {
  chooseInMenu,
  elsewherePage,
  expect,
  goToPlace,
  jobName,
  openCard,
  openDocument,
  openExample,
  test,
} from './bench.ts';

test.use({ permissions: ['clipboard-read', 'clipboard-write'] });

test('a shared link opens the same job elsewhere, and undo goes back from it', async ({ bench, browser, baseURL }) => {
  test.slow();
  await openExample(bench, 'choir book');
  await (await openCard(bench, 'book')).getByLabel('Width', { exact: true }).fill('151');
  await chooseInMenu(bench, 'Share link');
  await expect(bench.getByText('The link is copied.')).toBeVisible();
  const link = await bench.evaluate(() => navigator.clipboard.readText());
  expect(link).toBe(await bench.getByLabel('Link to this job').inputValue());

  const elsewhere = await elsewherePage(browser, baseURL);
  const sent: string[] = [];
  elsewhere.on('request', (request) => sent.push(request.url()));
  await elsewhere.goto(link);
  await expect(jobName(elsewhere)).toHaveText('Choir book');
  await openCard(elsewhere, 'book');
  await expect(elsewhere.getByLabel('Width', { exact: true })).toHaveValue('151 mm');
  // The browser's own view of requests shows the fragment of the page only; no other carries any of it.
  expect(sent.slice(1).filter((url) => url.includes('job='))).toEqual([]);
  expect(new URL(elsewhere.url()).hash).toBe('');
  await elsewhere.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(jobName(elsewhere)).toHaveText('Tide ledger');

  // Opened twice, it stands on the shelf once.
  await elsewhere.goto(link);
  await expect(elsewhere.getByLabel('Width', { exact: true })).toHaveValue('151 mm');
  await goToPlace(elsewhere, 'Shelf');
  await expect(elsewhere.locator('.job-card')).toHaveText([/Choir book151 mm/]);
  await elsewhere.close();
});

/** A fragment that holds a text, packed as a link is. */
function packed(text: string | Uint8Array): string {
  const dictionary = LINK_DICTIONARIES[4];
  return `#job=4.${deflateSync(text, { level: 9, dictionary }).toString('base64url')}`;
}

test('twenty hostile links say so, open nothing and run nothing', async ({ bench }) => {
  await openExample(bench, 'choir book');
  await chooseInMenu(bench, 'Share link');
  await expect(bench.getByLabel('Link to this job')).toHaveValue(/#job=5\./);
  const fragment = new URL(await bench.getByLabel('Link to this job').inputValue()).hash;
  await openExample(bench, 'shore guide');
  const letter = fragment.at(-4) === 'A' ? 'B' : 'A';
  const job = JSON.parse(readFileSync('public/jobs/choir-book.json', 'utf8'));
  const withWidth = (width: unknown) => packed(JSON.stringify({ ...job, book: { ...job.book, width_mm: width } }));
  const markup = '<img src=x onerror="window.ran=1">';
  const HOSTILE = [
    fragment.slice(0, -6),
    `${fragment.slice(0, -4)}${letter}${fragment.slice(-3)}`,
    '#job=9.abc',
    '#job=<b>',
    `#job=4.${'A'.repeat(20_000)}`,
    // Unpacks to 5 million characters.
    packed(JSON.stringify({ ...job, notes: '0'.repeat(5_000_000) })),
    packed('hello'),
    packed(new Uint8Array([0x22, 0xff, 0xfe, 0x22])),
    packed('null'),
    packed('[]'),
    packed('"text"'),
    packed('7'),
    packed('{"__proto__":{"ran":1},"book":{"__proto__":{"ran":1}}}'),
    packed('{"constructor":{"prototype":{"ran":1}}}'),
    packed('['.repeat(50_000)),
    packed(JSON.stringify({ ...job, version: 1e9 })),
    packed(JSON.stringify({ ...job, [markup]: markup })),
    withWidth(1e308),
    withWidth(-1),
    withWidth(markup),
  ];
  const note = bench.getByRole('alert');
  for (const hash of HOSTILE) {
    await bench.evaluate((address) => {
      window.location.hash = address;
    }, hash);
    await expect(note, hash.slice(0, 60)).toContainText('The link in the address was not opened');
    await note.getByRole('button', { name: 'Close this note' }).click();
    await expect(note).toBeHidden();
  }
  await expect(jobName(bench)).toHaveText('Shore guide');
  expect(await bench.evaluate(() => 'ran' in {} || 'ran' in window)).toBe(false);
  await bench.evaluate((hash) => {
    window.location.hash = hash;
  }, fragment);
  await expect(jobName(bench)).toHaveText('Choir book');
});

test('where the browser does not let a link be copied it is shown', async ({ bench }) => {
  await bench.evaluate(() => {
    navigator.clipboard.writeText = () => Promise.reject(new DOMException('no', 'NotAllowedError'));
  });
  await chooseInMenu(bench, 'Share link');
  await expect(bench.getByText('Copy this link.')).toBeVisible();
  await expect(bench.getByLabel('Link to this job')).toHaveValue(/#job=5\./);
});

test('a link for a customer opens the page alone, with the price only where it is chosen, and leads to the workshop', async ({
  bench,
  browser,
  baseURL,
}) => {
  test.slow();
  const job = JSON.parse(readFileSync('public/jobs/choir-book.json', 'utf8'));
  const rates = { maker: 'The harbour bench', currency: 'kr', prices: { hour: 317 }, markup_percent: 41 };
  await openDocument(bench, { ...job, rates });
  await goToPlace(bench, 'Customer');
  const price = await bench.getByRole('definition').filter({ hasText: /^kr / }).textContent();
  const link = async (choice: string): Promise<string> => {
    await bench.getByRole('radio', { name: choice }).check();
    await bench.getByRole('button', { name: 'Make the link' }).click();
    await expect(bench.getByText('The link is copied.')).toBeVisible();
    return bench.getByRole('textbox', { name: 'Link for the customer' }).inputValue();
  };
  await bench.getByRole('button', { name: 'Link for the customer' }).click();
  const [plain, priced] = [await link('Without the price'), await link('With the price')];

  const elsewhere = await elsewherePage(browser, baseURL);
  await elsewhere.setViewportSize({ width: 390, height: 844 });
  await elsewhere.goto(plain);
  const main = elsewhere.getByRole('main');
  await expect(main.getByRole('heading', { name: 'Choir book' })).toBeVisible();
  await expect(main).toContainText('by The harbour bench');
  await expect(main).not.toContainText('kr ');
  await expect(elsewhere.getByRole('link', { name: 'Back to the cover' })).toHaveCount(0);
  await expect(elsewhere.locator('input, select, textarea')).toHaveCount(0);
  await expect.poll(() => elsewhere.evaluate(() => document.documentElement.scrollWidth)).toBe(390);

  await elsewhere.goto(priced);
  await expect(main).toContainText(price ?? 'a price');
  await expect(main).toContainText('Let go, the new cover');

  // What this browser had open stays open until the workshop is asked for.
  expect(await elsewhere.evaluate(() => localStorage.getItem('coverwright.open-job.v1') ?? '')).not.toContain(
    'Choir book',
  );
  await elsewhere.getByRole('link', { name: 'Open in the workshop' }).click();
  await expect(jobName(elsewhere)).toHaveText('Choir book');
  await goToPlace(elsewhere, 'Customer');
  await expect(main.getByRole('heading', { name: 'Choir book' })).toBeVisible();
  await expect(main).not.toContainText('kr ');

  await elsewhere.goto(`${plain.slice(0, -7)}`);
  await expect(elsewhere.getByRole('heading', { name: 'This link cannot be shown' })).toBeVisible();
  await expect(elsewhere.getByRole('alert')).toContainText('cut off or altered');
  await elsewhere.close();
});
