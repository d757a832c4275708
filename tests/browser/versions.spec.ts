import { shareFragment } from '../../src/output/shareLink/shareLink.ts';
import { RECORDED_VERSIONS } from '../core/job/recordedVersions.ts';
import { defined } from '../defined.ts';
import { expect, goToPlace, headline, jobName as nameOfJob, openCard, openDocument, test } from './bench.ts';

/** A job as every edition so far has kept it: on the bench in the page's storage, on the shelf in the browser's database. */
for (const { version, document } of RECORDED_VERSIONS) {
  const name = String(document.name);

  test.describe(`version ${version}`, () => {
    test.use({ kept: JSON.stringify({ document, typed: {} }) });

    test(`a job of version ${version} opens from where it was kept: bench, shelf, link and file`, async ({ bench }) => {
      test.slow();
      const width = bench.getByLabel('Width', { exact: true });
      const jobName = nameOfJob(bench);

      await expect(jobName).toHaveText(name);
      await openCard(bench, 'book');
      await expect(width).toHaveValue('167 mm');

      // The shelf comes after the first paint; the database is laid out by it, not by this test.
      await expect
        .poll(() => bench.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name)))
        .toContain('coverwright');
      await bench.evaluate(async (found) => {
        const request = indexedDB.open('coverwright', 1);
        const database = await new Promise<IDBDatabase>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(request.error);
        });
        const transaction = database.transaction('jobs', 'readwrite');
        const row = { id: 'earlier', revision: 1, name: 'From the shelf', savedAt: 1, removedAt: null };
        transaction.objectStore('jobs').put({ ...row, document: { ...found, name: 'From the shelf' } });
        await new Promise((resolve) => {
          transaction.oncomplete = resolve;
        });
        database.close();
      }, document);
      await goToPlace(bench, 'Shelf');
      await bench.getByRole('button', { name: 'Open From the shelf' }).click();
      await expect(jobName).toHaveText('From the shelf');
      await expect(width).toHaveValue('167 mm');

      await bench.evaluate(
        (fragment) => {
          window.location.hash = fragment;
        },
        defined(shareFragment({ ...document, name: 'From a link' })),
      );
      await expect(jobName).toHaveText('From a link');
      await expect(width).toHaveValue('167 mm');

      await openDocument(bench, { ...document, name: 'From a file' });
      await expect(width).toHaveValue('167 mm');
      await expect(headline(bench)).not.toHaveText('');
    });
  });
}
