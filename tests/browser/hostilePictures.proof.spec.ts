import { ELSEWHERE, hostileDrawing, PAYLOAD } from '../artwork/hostileDrawings.ts';
import { isWholeProof, proofSize } from '../proof/proofSize.ts';
import { expect, goToPlace, openPart, test } from './bench.ts';

/** Files at each door. */
const FILES = proofSize(10_000, 8);

/** Files handed over at a time. */
const BATCH = 50;

/** Longest that a file may hold up the page, ms; what reads it may take longer, beside the page. */
const HANG = 1000;

/** The doors for pictures that the page reads itself; drawings for tooling have a proof of their own. */
const DOORS = {
  'the mark of the maker': {
    input: 'Picture of your mark',
    busy: 'The picture is being read.',
    open: async (page) => {
      await goToPlace(page, 'Customer');
      await page.getByText('Weights and mark').click();
    },
  },
  'a picture of the hide': {
    input: 'Picture of the hide',
    busy: 'The picture is being opened.',
    open: async (page) => {
      await openPart(page, 'Leather owned');
      await page.getByRole('button', { name: 'Draw by hand the outside leather' }).click();
    },
  },
} satisfies Record<
  string,
  { input: string; busy: string; open: (page: Parameters<typeof openPart>[0]) => Promise<void> }
>;

for (const [name, { input, busy, open }] of Object.entries(DOORS))
  test(`hostile files as ${name}: nothing runs or is fetched, none holds the page up, and the job stays`, async ({
    bench,
  }) => {
    test.setTimeout(proofSize(0, 180_000));
    const kept = () => bench.evaluate(() => JSON.parse(localStorage.getItem('coverwright.open-job.v1')!).document);
    const before = await kept();
    bench.on('dialog', (dialog) => {
      throw new Error(`a dialog: ${dialog.message()}`);
    });
    await open(bench);
    await expect(bench.getByLabel(input)).toBeAttached();
    const longest = { answer: 0, hang: 0, names: ['', ''] };
    for (let first = 0; first < FILES; first += BATCH) {
      const files = Array.from({ length: Math.min(BATCH, FILES - first) }, (_, i) => {
        const { file, name, bytes } = hostileDrawing(first + i);
        return { file, name, bytes: Buffer.from(bytes).toString('base64') };
      });
      const times = await bench.evaluate(
        async ([files, input, busy]) => {
          const picker = document.querySelector<HTMLInputElement>(`input[aria-label="${input}"]`)!;
          const isBusy = (): boolean =>
            [...document.querySelectorAll('[role="status"]')].some((said) => said.textContent?.includes(busy));
          const times: { answer: number; hang: number }[] = [];
          for (const { file, bytes } of files) {
            const chosen = new DataTransfer();
            chosen.items.add(new File([Uint8Array.from(atob(bytes), (letter) => letter.charCodeAt(0))], file));
            const start = performance.now();
            picker.files = chosen.files;
            picker.dispatchEvent(new Event('change', { bubbles: true }));
            let [now, hang] = [start, 0];
            do {
              await new Promise((resolve) => setTimeout(resolve));
              const before = now;
              now = performance.now();
              hang = Math.max(hang, now - before);
            } while (isBusy());
            times.push({ answer: now - start, hang });
          }
          return times;
        },
        [files, input, busy] as const,
      );
      for (const [i, { answer, hang }] of times.entries()) {
        if (answer > longest.answer) [longest.answer, longest.names[0]] = [answer, files[i]!.name];
        if (hang > longest.hang) [longest.hang, longest.names[1]] = [hang, files[i]!.name];
      }
      expect(await bench.evaluate((payload) => payload in window, PAYLOAD)).toBe(false);
    }
    expect(await bench.content()).not.toContain(ELSEWHERE);
    expect(await kept()).toEqual(before);
    const [answered, hung] = longest.names;
    console.info(
      `${FILES} files as ${name}: answered after ${Math.round(longest.answer)} ms at most (${answered}), the page held up for ${Math.round(longest.hang)} ms at most (${hung})`,
    );
    // Elsewhere a busy machine may hold any of them up.
    if (isWholeProof) expect(longest.hang).toBeLessThan(HANG);
  });
