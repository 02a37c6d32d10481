import { readdirSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import { largeClip } from './large-clip';
import { expect, test } from './shell-fixture';

test('adds a clip of 1 GB with progress that is true, can be stopped, and then holds every byte', async ({
  open,
  library,
}) => {
  const clip = path.join(path.dirname(library), 'large.mp4');
  largeClip(clip, 1);
  const { page, quit } = await open();
  await expect(page.getByRole('heading', { name: 'Shelf' })).toBeVisible();
  const arriving = path.join(library, '.arriving');
  const picker = page.getByLabel('Clips to add');
  const dialog = page.getByRole('dialog', { name: /Add large/ });
  const shares = () => page.evaluate(() => (window as { shares?: number[] }).shares ?? []);
  await page.evaluate(() => {
    const seen: number[] = [];
    (window as { shares?: number[] }).shares = seen;
    new MutationObserver(() => {
      const bar = document.querySelector<HTMLProgressElement>('.sending progress');
      if (bar && bar.value !== seen.at(-1)) seen.push(bar.value);
    }).observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
  });

  await picker.setInputFiles(clip);
  await dialog.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect.poll(() => readdirSync(arriving).length).toBe(1);
  await dialog.getByRole('button', { name: 'Stop' }).click();
  await expect.poll(() => readdirSync(arriving)).toEqual([]);

  await dialog.getByRole('button', { name: 'Add to the shelf' }).click();
  await expect(page.locator('.bench')).toBeVisible({ timeout: 0 });
  const seen = await shares();
  expect(seen.filter((share) => share > 0 && share < 1).length).toBeGreaterThan(2);
  const swims = readdirSync(path.join(library, 'swims')).map((id) =>
    path.join(library, 'swims', id, 'large.mp4'),
  );
  const added = swims.find((file) => statSync(file, { throwIfNoEntry: false }));
  expect(statSync(added ?? '').size).toBe(statSync(clip).size);
  await quit();
  rmSync(clip);
});
