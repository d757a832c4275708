import { expect, goToPlace, jobName, openExample, renameJob, test } from './bench.ts';

const NAME = '<img src=x onerror="window.ran=1"><script>window.ran=1</script>{{ran}}"\'--><svg onload=window.ran=1>';

test('markup in a name of a job is shown as it is written and never run', async ({ bench }) => {
  await openExample(bench, 'choir book');
  await renameJob(bench, NAME);
  await expect(jobName(bench)).toHaveText(NAME);
  await goToPlace(bench, 'Shelf');
  await expect(bench.locator('.job-card h3')).toHaveText(NAME);
  const more = bench.locator('.job-card summary', { hasText: 'More' });
  await more.click();
  await bench.getByRole('button', { name: /^Remove/ }).click();
  await bench.getByRole('button', { name: 'Put it back' }).click();
  await more.click();
  await bench.getByRole('button', { name: /^Versions/ }).click();
  await goToPlace(bench, 'Customer');
  // The shelf has headings of the same name until the page is there.
  await expect(bench.getByRole('heading', { name: NAME, exact: true, level: 1 })).toBeVisible();
  await expect(bench.locator('img[src=x]')).toHaveCount(0);
  expect(await bench.evaluate(() => 'ran' in window)).toBe(false);
});

test('the page lets no inline script, no text as code and no remote origin in', async ({ page }) => {
  await page.goto('');
  const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
  expect(policy).toContain("default-src 'none'");
  expect(policy).toContain("script-src 'self'");
  expect(policy).not.toMatch(/unsafe|https?:|\*/);
  await expect(page.locator('script:not([src])')).toHaveCount(0);
  await page.evaluate(async () => {
    const found: string[] = [];
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) => found.push(effectiveDirective));
    Object.assign(window, { found });
    const script = document.createElement('script');
    script.textContent = 'window.ran = 1';
    document.head.append(script);
    document.body.insertAdjacentHTML('beforeend', '<img src="x" onerror="window.ran = 1">');
    await fetch('https://192.0.2.1/').catch(() => {});
  });
  await expect
    .poll(() => page.evaluate(() => [...new Set((window as unknown as { found: string[] }).found)].sort()))
    .toEqual(['connect-src', 'script-src-attr', 'script-src-elem']);
  expect(await page.evaluate(() => 'ran' in window)).toBe(false);
});

test('the server sends the same policy with every file, for workers and frames too', async ({ page }) => {
  const response = await page.goto('');
  const worker = await page.request.get('sw.js');
  for (const headers of [response!.headers(), worker.headers()]) {
    const policy = headers['content-security-policy'];
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    expect(headers['x-content-type-options']).toBe('nosniff');
  }
});
