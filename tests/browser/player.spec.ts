import type { Played } from './harness/page';
import { expect, test } from './harness/clip-test';
import { makeClip } from './harness/make-clips';
import { propertyClips } from './property-clips';

async function made(name: string): Promise<string> {
  const clip = propertyClips.find((one) => one.name === name);
  if (!clip) throw new Error(`no clip is named ${name}`);
  const path = await makeClip(clip);
  test.skip(path === null, 'no ffmpeg here to make the clip with');
  return path ?? '';
}

const rightPictures = ({ shown }: Played): void => {
  expect(shown.map(({ number }) => number)).toEqual(shown.map(({ frame }) => frame));
};

for (const pace of [1 / 8, 1 / 4, 1 / 2, 1] as const) {
  test(`at ${pace} of true speed the frames shown keep to the clock`, async ({ clips }) => {
    await clips.open(await made('one-group-of-250'));
    const played = await clips.play({ from: 20, pace, slowdown: 1, milliseconds: 2000 });
    rightPictures(played);
    const [first, last] = [played.shown[0], played.shown.at(-1)];
    if (!first || !last) throw new Error('nothing was shown');
    expect(first.frame).toBe(20);
    const lapsed = (last.at - first.at) / 1000;
    // the clock starts within two screen pictures of the first one shown, and a busy machine shows one late
    expect(Math.abs((last.frame - 20) / 30 - lapsed * pace)).toBeLessThan(0.15);
    expect(played.paused).toBe(last.frame);
    expect(played.later).toBe(0);
  });
}

test('slow motion plays at true speed: stored eight times slower, played eight times faster', async ({
  clips,
}) => {
  await clips.open(await made('one-group-of-250'));
  const played = await clips.play({ from: 0, pace: 1 / 8, slowdown: 8, milliseconds: 1500 });
  rightPictures(played);
  const [first, last] = [played.shown[0], played.shown.at(-1)];
  if (!first || !last) throw new Error('nothing was shown');
  expect(Math.abs(last.frame / 30 - (last.at - first.at) / 1000)).toBeLessThan(0.15);
});

test('a variable-rate clip holds a picture through its gap', async ({ clips }) => {
  await clips.open(await made('variable-rate'));
  // frame 70 lasts 0.43 s, its neighbours about 33 ms
  const played = await clips.play({ from: 65, pace: 1, slowdown: 1, milliseconds: 1200 });
  rightPictures(played);
  const at = new Map(played.shown.map(({ frame, at: time }) => [frame, time]));
  const after = played.shown.find(({ frame }) => frame > 70);
  const before = played.shown.findLast(({ frame }) => frame <= 70);
  if (!after || !before) throw new Error('the gap was not reached');
  expect(after.at - (at.get(before.frame) ?? 0)).toBeGreaterThan(330);
});

test('a loop stays inside its stretch and comes round', async ({ clips }) => {
  await clips.open(await made('even-rate-b-frames'));
  const played = await clips.play({
    from: 0,
    pace: 1,
    slowdown: 1,
    milliseconds: 2200,
    loop: { first: 40, last: 60 },
  });
  rightPictures(played);
  const frames = played.shown.map(({ frame }) => frame);
  expect(Math.min(...frames)).toBe(40);
  expect(Math.max(...frames)).toBeLessThanOrEqual(60);
  const rounds = frames.filter((frame, n) => frame < (frames[n - 1] ?? 0)).length;
  expect(rounds).toBeGreaterThanOrEqual(2);
  expect(played.stopped).toBeNull();
});

test('the end is the last frame, and playing stops there', async ({ clips }) => {
  await clips.open(await made('even-rate-b-frames'));
  const played = await clips.play({ from: 130, pace: 1, slowdown: 1, milliseconds: 1800 });
  rightPictures(played);
  expect(played.stopped).toBe('end at 149');
  expect(played.paused).toBe(149);
});
