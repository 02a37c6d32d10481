import type { Page } from '@playwright/test';
import { boxTitled, isModal, pressIn } from './desktop';
import { expect, test } from './shell-fixture';

/** Asks for a place as the page's own button does. */
const pick = (page: Page, wanted: string): Promise<unknown> =>
  page.evaluate(
    (place) =>
      (
        window as unknown as { submarkHost: { run(name: string, input: unknown): Promise<unknown> } }
      ).submarkHost.run('place/pick', { wanted: place }),
    wanted,
  );

test('asks for places in the system’s own dialogs, over the window and by their titles', async ({ open }) => {
  const { page, quit } = await open();
  await expect(page.getByRole('heading', { name: 'Shelf' })).toBeVisible();
  for (const [wanted, title] of [
    ['film', /^Choose a clip$/],
    ['archive', /^Choose a back-up$/],
    ['folder', /^Choose a folder$/],
    ['new-archive', /^Back up the library$/],
  ] as const) {
    const asked = pick(page, wanted);
    const box = await boxTitled(title);
    expect(isModal(box), wanted).toBe(true);
    pressIn(box, 'Escape');
    expect(await asked).toEqual({ ok: true, value: { path: null } });
  }
  await quit();
});
