import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { landmarkNames, type LandmarkName } from '#core/marks/landmark';
import { parseSwim, serialiseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { truthSchema } from '../../sample-clips/truth-schema';
import { expect, test } from './app-fixture';

const swimId = 'sample-phone-portrait';
const truth = truthSchema.parse(
  JSON.parse(
    readFileSync(fileURLToPath(new URL(`../../sample-clips/truth/${swimId}.json`, import.meta.url)), 'utf8'),
  ),
);

const fileOf = (library: string): string => path.join(library, 'swims', swimId, 'swim.json');
function swimOf(library: string): Swim {
  const parsed = parseSwim(readFileSync(fileOf(library), 'utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}

/** Root mean square distance from the drawn truth, share of the body length. */
function rmsOf({ seen }: Swim, name: LandmarkName): number {
  const at = 2 * landmarkNames.indexOf(name);
  const squares = seen
    .filter(({ landmark }) => landmark === name)
    .flatMap(({ frame, points }) =>
      points.map(([x, y], i) => {
        const row = truth.points[frame + i] ?? [];
        return (x - (row[at] ?? 0)) ** 2 + (y - (row[at + 1] ?? 0)) ** 2;
      }),
    );
  const mean = squares.reduce((sum, each) => sum + each, 0) / squares.length;
  return (Math.sqrt(mean) * truth.metresPerPixel) / truth.bodyLengthMetres;
}

test('a coach sees the swimmer on an unmarked swim without a click on the picture, reviews kicks, and undoes it all', async ({
  page,
  app,
}) => {
  const bare: Swim = {
    ...swimOf(app.library),
    ...{ events: [], postures: [], followed: [], cameraPath: [] },
  };
  const unmarked = { ...bare, scene: { ...bare.scene, travel: null } };
  writeFileSync(fileOf(app.library), serialiseSwim(unmarked));
  await page.evaluate((id) => {
    window.location.hash = `#/bench/${id}`;
  }, swimId);
  await expect(page.locator('.stage').first()).toHaveAttribute('data-shown-frame', /\d/);

  // cancelled while it looks: nothing is changed
  await page.keyboard.press('Shift+S');
  const panel = page.getByRole('complementary', { name: 'Follow and propose' });
  await expect(panel.getByText(/pictures a second/)).toBeVisible({ timeout: 120_000 });
  await page.keyboard.press('Escape');
  await expect(panel.getByText('Cancelled. Nothing was changed.')).toBeVisible();
  expect(swimOf(app.library).seen).toEqual([]);

  await panel.getByRole('button', { name: /See the swimmer/ }).click();
  await expect(panel.getByText(/Submark saw the swimmer on/)).toBeVisible({ timeout: 240_000 });
  await expect(panel).toContainText(`It set the direction of travel to ${truth.travel}`);
  await expect.poll(() => swimOf(app.library).seen.length).toBeGreaterThan(0);
  const after = swimOf(app.library);
  expect(after.scene.travel).toBe(truth.travel);
  expect([after.postures, after.followed, after.events]).toEqual([[], [], []]);
  const seenOn = after.seen.filter(({ landmark }) => landmark === 'hip').flatMap(({ points }) => points);
  expect(seenOn.length).toBeGreaterThan(0.95 * truth.realTimes.length);
  for (const name of ['shoulder', 'hip', 'knee', 'ankle', 'toe'] as const)
    expect(rmsOf(after, name), name).toBeLessThan(0.025);

  // kicks are suggested, near the drawn ones; nothing is read until one is accepted
  const tops = truth.events.filter(({ kind }) => kind === 'kick-top');
  const proposed = page.locator('[data-proposal^="kick-top"]');
  await expect.poll(() => proposed.count()).toBeGreaterThan(tops.length - 3);
  await page.keyboard.press('p');
  const review = page.getByRole('region', { name: 'Review' });
  await expect(review).toContainText(/Kicks 1 of/);
  await page.keyboard.press('k');
  await expect.poll(() => swimOf(app.library).events.map(({ from }) => from)).toEqual(['proposal']);
  // the rest of these kicks with one key, and on to the next ones
  await page.keyboard.press('Shift+K');
  await expect.poll(() => swimOf(app.library).events.length).toBe(6);
  await expect(review).toContainText(/Kicks 2 of/);
  await page.keyboard.press('Escape');
  await expect(review).toHaveCount(0);
  for (let step = 0; step < 3; step++) await page.keyboard.press('Control+z');
  await expect.poll(() => swimOf(app.library).seen).toEqual([]);
  expect(swimOf(app.library)).toMatchObject({ events: [], scene: { travel: null } });
});
