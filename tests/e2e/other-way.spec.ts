import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from './app-fixture';

const id = 'sample-butterfly-together';
const fileOf = (library: string): string => path.join(library, 'swims', id, 'swim.json');

test('a swim told the wrong way round is turned round with one click, and back by undo', async ({
  page,
  app,
}) => {
  const swim = JSON.parse(readFileSync(fileOf(app.library), 'utf8'));
  const right = swim.scene.travel as string;
  const wrong = right === 'left' ? 'right' : 'left';
  swim.scene.travel = wrong;
  writeFileSync(fileOf(app.library), JSON.stringify(swim));
  await page.goto(`${new URL(page.url()).origin}/#/bench/${id}`);
  const notice = page.getByText('Does the swimmer go the other way?');
  await expect(notice).toBeVisible();
  await page.getByRole('button', { name: 'Turn it round' }).click();
  await expect(notice).toHaveCount(0);
  await expect.poll(() => JSON.parse(readFileSync(fileOf(app.library), 'utf8')).scene.travel).toBe(right);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(notice).toBeVisible();
});
