import type { Page } from '@playwright/test';
import { expect, test } from './harness/clip-test';
import { probeStarts } from './harness/independent-decode';
import { type MadeClip, makeClip } from './harness/make-clips';
import type { SeenTogether } from './harness/pair-page';

const small = {
  width: 320,
  height: 180,
  extension: 'mp4',
  encode: [
    ...['-c:v', 'libx264', '-preset', 'ultrafast', '-crf', '20'],
    ...['-x264-params', 'keyint=120:scenecut=0', '-enc_time_base', '1:120000'],
    ...['-video_track_timescale', '120000'],
  ],
};
/** A minute at 60 a second. */
const even: MadeClip = { ...small, name: 'minute-at-60', rate: 60, pictures: 3600 };
/** A minute at 119.88 a second whose pictures come up to 3 ms early or late, as a phone's do. */
const uneven: MadeClip = {
  ...small,
  name: 'minute-at-119-88-uneven',
  rate: 119.88,
  pictures: 7193,
  after: "settb=1/120000,setpts='N*1001+360*sin(N*1.7)+360'",
};

/** The last start at or before a time: the lookup rule, by looking at every start. */
const lookedUp = (starts: readonly number[], time: number): number =>
  Math.max(
    0,
    starts.findLastIndex((start) => start - (starts[0] ?? 0) <= time + 2e-6),
  );

const locks = [0.5, 0.7] as const;

async function opened(page: Page, address: (path: string) => string): Promise<[number[], number[]] | null> {
  const paths = [await makeClip(even), await makeClip(uneven)];
  if (!paths[0] || !paths[1]) return null;
  const starts = [await probeStarts(paths[0]), await probeStarts(paths[1])];
  if (!starts[0] || !starts[1]) return null;
  await page.evaluate(([addresses, at]) => window.harness.openPair(addresses, at), [
    paths.map((path) => address(path ?? '')),
    locks,
  ] as const);
  return [starts[0], starts[1]];
}

const rightPictures = (all: readonly SeenTogether[]): void =>
  expect(all.map(({ numbers }) => numbers)).toEqual(all.map(({ frames }) => frames));

test('60/s and uneven 119.88/s step in lock over a minute: no drift, by the numbers in the pictures', async ({
  page,
  clips,
  server,
}) => {
  expect(await clips.memory()).toBeNull();
  const starts = await opened(page, (path) => server.clip(path));
  test.skip(starts === null, 'no ffmpeg here to make the clips with');
  if (!starts) return;
  const [a, b] = starts;
  expect([a.length, b.length]).toEqual([3600, 7193]);

  const close = Array.from({ length: 60 }, (_, n) => n);
  const steps = [
    ...close,
    ...Array.from({ length: 150 }, (_, n) => 60 + 23 * n),
    ...close.map((n) => 3540 + n),
    ...close.map((n) => 3570 - n),
  ];
  const byA = await page.evaluate((to) => window.harness.walkPair(0, to), steps);
  rightPictures(byA);
  expect(byA.map(({ frames }) => frames)).toEqual(
    steps.map((frame) => [frame, lookedUp(b, (a[frame] ?? 0) - (a[0] ?? 0) - locks[0] + locks[1])]),
  );

  const back = [...close.map((n) => 7100 - n), 3600, 3599, 3598, 84, 83, 0];
  const byB = await page.evaluate((to) => window.harness.walkPair(1, to), back);
  rightPictures(byB);
  expect(byB.map(({ frames }) => frames)).toEqual(
    back.map((frame) => [lookedUp(a, (b[frame] ?? 0) - (b[0] ?? 0) - locks[1] + locks[0]), frame]),
  );

  const memory = await page.evaluate(() => window.harness.pairMemory());
  const budget = memory.reduce((sum, each) => sum + each.budgetBytes, 0);
  expect(budget).toBe(512 * 2 ** 20);
  for (const each of memory) expect(each.heldBytes).toBeLessThanOrEqual(each.budgetBytes);
  await page.evaluate(() => window.harness.closePair());
  expect(await page.evaluate(() => window.harness.openFrames())).toBe(0);
});

test('played together, both pictures are of one moment, and the clock is true', async ({
  page,
  clips,
  server,
}) => {
  expect(await clips.memory()).toBeNull();
  const starts = await opened(page, (path) => server.clip(path));
  test.skip(starts === null, 'no ffmpeg here to make the clips with');
  if (!starts) return;
  const [a, b] = starts;
  const from = [3000, lookedUp(b, (a[3000] ?? 0) - locks[0] + locks[1])];
  const played = await page.evaluate((at) => window.harness.playPair(at, 0.5, 120), from);
  rightPictures(played);
  for (const { frames } of played) {
    // both of one moment: each picture has begun, and begins before the other's next
    const [n = 0, m = 0] = frames;
    const [fromA, toA] = [(a[n] ?? 0) - locks[0], (a[n + 1] ?? 0) - locks[0]];
    const [fromB, toB] = [b[m] ?? 0, b[m + 1] ?? 0].map((start) => start - (b[0] ?? 0) - locks[1]);
    expect(fromA).toBeLessThan((toB ?? 0) + 2e-6);
    expect(fromB ?? 0).toBeLessThan(toA + 2e-6);
  }
  expect(played).toHaveLength(120);
  // when the clock began by each moment: a busy machine shows some late, none early, so the earliest of several counts
  const began = played.map(({ frames, at }) => at / 1000 - (a[frames[0] ?? 0] ?? 0) / 0.5);
  const drift = Math.min(...began.slice(-40)) - Math.min(...began.slice(0, 40));
  expect(Math.abs(drift)).toBeLessThan(0.12);
  await page.evaluate(() => window.harness.closePair());
});
