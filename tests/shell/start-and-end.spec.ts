import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parseSwim } from '#core/swim-file/swim-file';
import { expect, test } from './shell-fixture';

const swimId = 'sample-phone-portrait';

const savedEvents = (library: string): number => {
  const parsed = parseSwim(readFileSync(path.join(library, 'swims', swimId, 'swim.json'), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value.events.length;
};

test('Submark starts, opens a swim, steps, marks, quits, and shows the mark when it is opened again', async ({
  open,
  library,
}) => {
  const first = await open();
  await expect(first.page.getByRole('heading', { name: 'Shelf' })).toBeVisible();
  expect(await first.electron.evaluate(({ app }) => app.getName())).toBe('Submark');
  await first.page.evaluate((id) => {
    window.location.hash = `#/bench/${id}`;
  }, swimId);
  await expect(first.page.locator('.stage')).toHaveAttribute('data-shown-frame', '0');
  await first.page.locator('body').press('ArrowRight');
  await expect(first.page.locator('.stage')).toHaveAttribute('data-shown-frame', '1');
  const before = savedEvents(library);
  await first.page.locator('body').press('a');
  await expect.poll(() => savedEvents(library)).toBe(before + 1);
  await first.quit();

  const second = await open();
  await second.page.evaluate((id) => {
    window.location.hash = `#/bench/${id}`;
  }, swimId);
  await expect(second.page.locator('.stage')).toHaveAttribute('data-shown-frame', /\d/);
  expect(savedEvents(library)).toBe(before + 1);
  await second.quit();
});
