import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from './harness/clip-test';
import { makeClip } from './harness/make-clips';
import { largeClip, propertyClips } from './property-clips';

async function made(name: string): Promise<string> {
  const clip = [...propertyClips, largeClip].find((one) => one.name === name);
  if (!clip) throw new Error(`no clip is named ${name}`);
  const path = await makeClip(clip);
  test.skip(path === null, 'no ffmpeg here to make the clip with');
  return path ?? '';
}

const upTo = (count: number): number[] => Array.from({ length: count }, (_, n) => n);

/** 640 × 360 in planes of I420 (1.5 bytes a pixel). */
const pictureBytes = 640 * 360 * 1.5;

test('a newer request makes older ones end as aborted, and the newest is shown', async ({ clips }) => {
  await clips.open(await made('one-group-of-250'));
  // all far from the first frames, which are decoded as soon as a clip is open
  const ends = await clips.hurry([240, 110, 200, 130, 150]);
  expect(ends).toEqual(['AbortError', 'AbortError', 'AbortError', 'AbortError', 'shown 150']);
});

test('a frame outside the clip is the nearest one there is', async ({ clips }) => {
  await clips.open(await made('even-rate-b-frames'));
  expect(await clips.hurry([-5])).toEqual(['shown 0']);
  expect(await clips.hurry([9999])).toEqual(['shown 149']);
});

test('a small budget is kept, and every frame is still right', async ({ clips }) => {
  const budget = 24 * pictureBytes;
  await clips.open(await made('one-group-of-250'), budget);
  for (const [frames, towards] of [
    [upTo(120), 1],
    [upTo(120).reverse(), -1],
  ] as const) {
    const seen = await clips.walk(frames, towards);
    expect(seen.map(({ number }) => number)).toEqual([...frames]);
    const memory = await clips.memory();
    expect(memory?.budgetBytes).toBe(budget);
    expect(memory?.heldBytes).toBeLessThanOrEqual(budget);
    expect(memory?.pictures).toBeGreaterThan(10);
  }
  expect(await clips.close()).toBe(0);
});

test('pictures at half size while moving are the right ones, and turn whole where the coach stops', async ({
  clips,
}) => {
  const budget = 60 * pictureBytes;
  await clips.open(await made('one-group-of-250'), budget);
  for (const [frames, towards] of [
    [upTo(200), 1],
    [upTo(200).reverse(), -1],
    [[120, 20, 70, 140], 0],
  ] as const) {
    const seen = await clips.walk(frames, towards, 0, true);
    expect(seen.map(({ number }) => number)).toEqual([...frames]);
    // more than would fit at full resolution
    if (towards < 0) expect((await clips.memory())?.pictures).toBeGreaterThan(80);
    expect((await clips.memory())?.heldBytes).toBeLessThanOrEqual(budget);
  }
  // far from where the walk ended, but still held at half size; then work that needs whole pictures asks for the same
  await clips.walk([...upTo(120)].reverse().slice(0, 60), -1, 0, true);
  const ends = [await clips.rest(70), await clips.rest(150), await clips.rest(90)];
  expect(ends.map(({ later, number }) => [later, number])).toEqual([
    [true, 70],
    [true, 150],
    [true, 90],
  ]);
  expect(ends.some(({ first }) => !first)).toBe(true);
  expect((await clips.walk([75, 30, 74], 0)).map(({ number }) => number)).toEqual([75, 30, 74]);
  expect(await clips.close()).toBe(0);
});

test('a picture larger than a screen is drawn at half size while moving, and whole where the coach stops', async ({
  clips,
}) => {
  await clips.open(await made('larger-than-a-screen'));
  const frames = upTo(24);
  for (const [walk, towards] of [
    [frames, 1],
    [[...frames].reverse(), -1],
  ] as const)
    expect((await clips.walk(walk, towards, 0, true)).map(({ number }) => number)).toEqual([...walk]);
  for (const frame of [9, 10, 20])
    expect(await clips.rest(frame)).toEqual({ first: false, later: true, number: frame });
  // work that measures pictures has whole ones at once
  expect(await clips.wholeAtOnce([3, 18])).toEqual([true, true]);
  const memory = await clips.memory();
  expect(memory?.heldBytes).toBeLessThanOrEqual(memory?.budgetBytes ?? 0);
  // a smaller budget is kept at once, and every frame is still right
  const less = 12 * 2304 * 1304 * 1.5;
  expect(await clips.limitTo(less)).toBeLessThanOrEqual(less);
  expect((await clips.walk(frames, 1, 0, true)).map(({ number }) => number)).toEqual(frames);
  expect((await clips.memory())?.heldBytes).toBeLessThanOrEqual(less);
  expect(await clips.close()).toBe(0);
});

test('a walk back and forth over group edges shows every frame right at any turn', async ({ clips }) => {
  await clips.open(await made('open-groups'), 40 * pictureBytes);
  let at = 70;
  for (const turn of [-30, 25, -48, 6, -3, 60, -80, 100]) {
    const step = Math.sign(turn) as -1 | 1;
    const frames = Array.from({ length: Math.abs(turn) }, (_, n) => at + step * (n + 1));
    const seen = await clips.walk(frames, step);
    expect(seen.map(({ number }) => number)).toEqual(frames);
    at += turn;
  }
});

test('500 steps leave no decoder picture open and hold no more than the budget', async ({ clips }) => {
  const budget = 30 * pictureBytes;
  await clips.open(await made('even-rate-b-frames'), budget);
  const frames = Array.from({ length: 500 }, (_, n) => Math.round(70 + 60 * Math.sin(n / 17)));
  const seen = await clips.walk(frames, 0);
  expect(seen.map(({ number }) => number)).toEqual(frames);
  expect((await clips.memory())?.heldBytes).toBeLessThanOrEqual(budget);
  expect(await clips.close()).toBe(0);
});

test('closing in the middle of decoding ends the request and closes every picture', async ({ clips }) => {
  await clips.open(await made('one-group-of-250'));
  const ends = clips.hurry([245]);
  expect(await clips.close()).toBe(0);
  expect(await ends).toEqual(['AbortError']);
});

test('a copy with the same frame times stands in for the clip, another is refused', async ({ clips }) => {
  const original = await made('even-rate-b-frames');
  const copy = await made('only-key-pictures');
  const opened = await clips.tryOpen(original, copy);
  expect(opened).toMatchObject({ ok: true, value: { width: 640, height: 360 } });
  const seen = await clips.walk([0, 60, 59, 58, 149], 0);
  expect(seen.map(({ number }) => number)).toEqual([0, 60, 59, 58, 149]);
  expect(await clips.tryOpen(original, await made('variable-rate'))).toMatchObject({
    ok: false,
    error: { code: 'conflict' },
  });
});

test('damage in the middle costs its own frames only, and never shows a wrong one', async ({ clips }) => {
  const whole = readFileSync(await made('index-at-the-front'));
  const damaged = Buffer.from(whole);
  // the middle of the picture data, far from the headers
  damaged.fill(0xff, Math.round(damaged.length * 0.55), Math.round(damaged.length * 0.55) + 4000);
  const path = fileURLToPath(new URL('../../.cache/clips/damaged-in-the-middle.mp4', import.meta.url));
  writeFileSync(path, damaged);
  const facts = await clips.open(path);
  const frames = upTo(facts.table.starts.length);
  expect(frames.length).toBe(150);
  let shown = 0;
  for (const frame of frames) {
    const [end] = await clips.hurry([frame]);
    if (end === `shown ${frame}`) shown += 1;
    else expect(['PictureLost', 'shown null']).toContain(end);
  }
  expect(shown).toBeGreaterThanOrEqual(115);
  expect(await clips.close()).toBe(0);
});

test('a still that is painted after its film was put away leaves the canvas as it is', async ({ clips }) => {
  // JPEG keeps an even grey to a step or two
  const [before = -1, after] = await clips.stillsOnStage();
  expect(Math.abs(before - 200)).toBeLessThan(3);
  expect(after).toBe(0);
});
