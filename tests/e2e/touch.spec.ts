import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { CDPSession, Locator, Page } from '@playwright/test';
import { parsePractice } from '#core/practice/practice-file';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';
import { screenList } from '../../renderer/ui/screen-list';
import { expect, test } from './app-fixture';
import { settled, standingBox } from './standing';

const butterfly = 'sample-butterfly-together';
const tablet = { width: 1180, height: 820 };
test.use({ hasTouch: true, viewport: tablet });

type Place = readonly [x: number, y: number];

/** Fingers on the glass, by the browser's own touch events: they lie down, move in steps, and are lifted. */
async function fingers(session: CDPSession, from: readonly Place[], to: readonly Place[]): Promise<void> {
  const points = (share: number) =>
    from.map(([x, y], id) => {
      const [endX, endY] = to[id] ?? [x, y];
      return { id, x: x + (endX - x) * share, y: y + (endY - y) * share };
    });
  const steps = 6;
  // one finger comes after the other, as fingers do
  for (let n = 1; n <= from.length; n++)
    await session.send('Input.dispatchTouchEvent', {
      type: 'touchStart',
      touchPoints: points(0).slice(0, n),
    });
  for (let step = 1; step <= steps; step++)
    await session.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: points(step / steps) });
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}

const swimOf = (library: string): Swim => {
  const parsed = parseSwim(readFileSync(path.join(library, 'swims', butterfly, 'swim.json'), 'utf8'));
  if (!parsed.ok) throw new Error(parsed.fault.code);
  return parsed.value;
};

async function open(page: Page, address: string): Promise<void> {
  await page.evaluate((hash) => {
    window.location.hash = hash;
  }, address);
  await page.locator('h1, [role="heading"], .stage, .where').first().waitFor();
}

test('fingers drag a landmark, pinch and push the picture, and move a mark on the score', async ({
  page,
  app,
}) => {
  const session = await page.context().newCDPSession(page);
  const before = swimOf(app.library);
  const posture = before.postures[0];
  const [hip] = posture ? Object.entries(posture.points).filter(([name]) => name === 'hip') : [];
  if (!posture || !hip) throw new Error('the sample has no body line with a hip');
  await open(page, `#/bench/${butterfly}`);
  await page.getByRole('slider', { name: 'Scrub through the film' }).fill(String(posture.frame));
  await expect(page.locator(`.stage[data-shown-frame="${posture.frame}"]`)).toBeVisible();
  const box = await standingBox(page.locator('.stage-surface'));
  const { width, height } = before.clip;
  const scale = Math.min(box.width / width, box.height / height);
  const place = ({ x, y }: { x: number; y: number }): Place => [
    box.x + (box.width - width * scale) / 2 + x * scale,
    box.y + (box.height - height * scale) / 2 + y * scale,
  ];

  // a landmark under one finger, 60 px along and 30 px down on the screen
  const [x, y] = place(hip[1]);
  await fingers(session, [[x, y]], [[x + 60, y + 30]]);
  const hipNow = () => swimOf(app.library).postures[0]?.points.hip;
  await expect.poll(() => hipNow()?.x).not.toBe(hip[1].x);
  expect((hipNow()?.x ?? 0) - hip[1].x).toBeCloseTo(60 / scale, -1);
  expect((hipNow()?.y ?? 0) - hip[1].y).toBeCloseTo(30 / scale, -1);
  await page.keyboard.press('Control+z');
  await expect.poll(() => hipNow()?.x).toBe(hip[1].x);

  // two fingers apart: closer; two fingers along: pushed; no mark is touched by either
  const middle: Place = [box.x + box.width / 2, box.y + box.height / 2];
  const picture = (): Promise<Buffer> => page.locator('.stage-surface').screenshot();
  const whole = await picture();
  await fingers(
    session,
    [
      [middle[0] - 40, middle[1]],
      [middle[0] + 40, middle[1]],
    ],
    [
      [middle[0] - 160, middle[1]],
      [middle[0] + 160, middle[1]],
    ],
  );
  await expect.poll(async () => (await picture()).equals(whole)).toBe(false);
  const closer = await picture();
  await fingers(
    session,
    [
      [middle[0] - 40, middle[1]],
      [middle[0] + 40, middle[1]],
    ],
    [
      [middle[0] + 60, middle[1] + 50],
      [middle[0] + 140, middle[1] + 50],
    ],
  );
  await expect.poll(async () => (await picture()).equals(closer)).toBe(false);

  // a glyph on the score, along the time axis
  const glyph = page.locator('.glyph').nth(2);
  const at = await standingBox(glyph);
  const id = await glyph.getAttribute('data-event');
  const was = Number(await glyph.getAttribute('data-frame'));
  const from: Place = [at.x + at.width / 2, at.y + at.height / 2];
  await fingers(session, [from], [[from[0] + 40, from[1]]]);
  await expect(page.locator(`.glyph[data-event="${id}"]`)).not.toHaveAttribute('data-frame', String(was));
  await expect
    .poll(() => swimOf(app.library).events.find((mark) => mark.id === id)?.frame)
    .toBeGreaterThan(was);
  // what is saved now is all of the swim: two fingers on the picture have moved nothing
  const after = swimOf(app.library);
  expect(after.postures).toEqual(before.postures);
  const others = (swim: Swim) => swim.events.filter((mark) => mark.id !== id);
  expect(others(after)).toEqual(others(before));
});

test('every control is large enough for a finger on every screen, and lists are pushed by one', async ({
  page,
  app,
}) => {
  expect(app.said()).toContain('library');
  const small: string[] = [];
  const shown: Readonly<Record<string, string>> = {
    bench: `#/bench/${butterfly}`,
    pair: `#/pair/${butterfly}/sample-butterfly-late-kick`,
    handout: `#/handout/${butterfly}`,
    shelf: '#/',
  };
  for (const { name } of screenList) {
    await open(page, shown[name] ?? `#/${name}`);
    await settled(page);
    small.push(
      ...(await page.evaluate(
        (screen) =>
          [
            ...document.querySelectorAll<HTMLElement | SVGElement>(
              'button, [role="button"], select, input, summary',
            ),
          ]
            .map((each) => ({ each, box: (each.closest('label') ?? each).getBoundingClientRect() }))
            .filter(
              ({ each, box }) =>
                box.width > 0 &&
                !each.closest('.unseen, [aria-hidden="true"]') &&
                // marks on a time axis lie closer together than fingers: there the nearest is taken, and keys step on
                Math.min(box.width, box.height) < (each instanceof SVGElement ? 23.5 : 43.5),
            )
            .map(
              ({ each, box }) =>
                `${screen}: ${each.tagName}.${each.getAttribute('class')} “${(each.getAttribute('aria-label') ?? each.textContent ?? '').trim().slice(0, 30)}” ${Math.round(box.width)} × ${Math.round(box.height)}`,
            ),
        name,
      )),
    );
  }
  expect([...new Set(small)]).toEqual([]);

  // the shelf is longer than the window: a finger pushes it
  await open(page, '#/');
  await page.setViewportSize({ width: 1024, height: 640 });
  const session = await page.context().newCDPSession(page);
  const first = page.locator('.swim-tile').first();
  const before = await standingBox(first);
  await fingers(session, [[500, 560]], [[500, 260]]);
  await expect
    .poll(async () => (await first.boundingBox())?.y ?? Number.POSITIVE_INFINITY)
    .toBeLessThan(before.y - 100);
});

/** Practices on disk with their logged counts, by name of the swimmer's id. */
function countsLogged(library: string): (number | null)[] {
  const folder = path.join(library, 'practices');
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .flatMap((name) => {
      const parsed = parsePractice(readFileSync(path.join(folder, name), 'utf8'));
      return parsed.ok ? parsed.value.log.map(({ count }) => count) : [];
    });
}

for (const [words, hasTouch] of [
  ['fingers', true],
  ['a mouse', false],
] as const)
  test.describe(`with ${words} alone`, () => {
    test.use({ hasTouch });
    test('a swim is opened, stepped, marked, taken back, kept as a still, and a repeat is logged on deck', async ({
      page,
      app,
    }) => {
      test.setTimeout(180_000);
      const press = (wanted: Locator): Promise<void> => (hasTouch ? wanted.tap() : wanted.click());
      const button = (name: string | RegExp): Locator => page.getByRole('button', { name }).first();
      const marks = (): number => swimOf(app.library).events.length;
      const before = marks();
      await press(page.locator(`.swim-tile-open[data-swim="${butterfly}"]`));
      const where = page.locator('.where');
      await expect(page.locator('.stage[data-shown-frame="0"]')).toBeVisible();
      await press(button(/^One frame on/));
      await press(button(/^One frame on/));
      await expect(where).toHaveAttribute('data-frame', '2');
      await press(page.locator('[data-pad="kick-top"]'));
      await expect(page.locator('.glyph')).toHaveCount(before + 1);
      await expect.poll(marks).toBe(before + 1);
      await press(button('Undo'));
      await expect.poll(marks).toBe(before);
      await press(button('Redo'));
      await expect.poll(marks).toBe(before + 1);
      await press(button(/▶ Play/));
      await press(button(/Stop/));
      await press(button('Next mark'));
      await press(button('Still'));
      const dialog = page.getByRole('dialog');
      await press(dialog.getByRole('button', { name: /^Save/ }));
      await expect(dialog.getByText(/saved/i).first()).toBeVisible();
      await press(dialog.getByRole('button', { name: 'Close' }));
      await expect(dialog).toHaveCount(0);
      await press(button('‹ Shelf'));
      await expect(page.locator('.swim-tile-open').first()).toBeVisible();

      const logged = countsLogged(app.library);
      await press(page.getByRole('navigation').getByText('Sets').first());
      await press(page.locator('main a').first());
      await press(button('On deck'));
      await press(button(/^One stroke more for /));
      await press(button(/^One stroke more for /));
      await press(button(/^Start the watch of /));
      // a watch is read to the tenth
      await expect(button(/^Stop the watch of /)).toHaveText(/Stop \d+:?\d*\.?\d*[1-9]/);
      await press(button(/^Stop the watch of /));
      await expect(page.getByLabel(/^Time of /).first()).toHaveValue(/^\d+:\d\d/);
      await expect.poll(() => countsLogged(app.library)).not.toEqual(logged);
      await expect(page.locator('[data-save="saved"]').first()).toBeVisible();
    });
  });
