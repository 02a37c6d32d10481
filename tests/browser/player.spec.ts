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

/**
 * When the clock began by each picture shown, seconds: when it was shown, less when it is due. A busy machine shows
 * pictures late, never early, so the earliest of several is the one to hold the clock to.
 */
const beginnings = ({ shown }: Played, due: (frame: number) => number): number[] =>
  shown.map(({ frame, at }) => at / 1000 - due(frame));

/** Whether the clock kept its pace from the first third of what was shown to the last. */
function keepsTime(played: Played, due: (frame: number) => number): void {
  const began = beginnings(played, due);
  const third = Math.ceil(began.length / 3);
  const drift = Math.min(...began.slice(-third)) - Math.min(...began.slice(0, third));
  // a screen's pictures are up to 17 ms apart, and a timer of a busy machine several times that
  expect(Math.abs(drift)).toBeLessThan(0.12);
}

for (const [pace, pictures] of [
  [1 / 8, 8],
  [1 / 4, 15],
  [1 / 2, 30],
  [1, 55],
] as const) {
  test(`at ${pace} of true speed the frames shown keep to the clock`, async ({ clips }) => {
    await clips.open(await made('one-group-of-250'));
    const played = await clips.play({ from: 20, pace, slowdown: 1, until: { pictures } });
    rightPictures(played);
    expect(played.shown[0]?.frame).toBe(20);
    keepsTime(played, (frame) => frame / 30 / pace);
    expect(played.paused).toBe(played.shown.at(-1)?.frame);
    expect(played.later).toBe(0);
  });
}

test('slow motion plays at true speed: stored eight times slower, played eight times faster', async ({
  clips,
}) => {
  await clips.open(await made('one-group-of-250'));
  const played = await clips.play({ from: 0, pace: 1 / 8, slowdown: 8, until: { pictures: 40 } });
  rightPictures(played);
  keepsTime(played, (frame) => frame / 30);
});

test('a variable-rate clip holds a picture through its gap', async ({ clips }) => {
  const { table } = await clips.open(await made('variable-rate'));
  const due = (frame: number): number => (table.starts[frame] ?? 0) / table.ticksPerSecond;
  // frame 70 lasts 0.43 s, its neighbours about 33 ms
  expect(due(71) - due(70)).toBeGreaterThan(0.4);
  const played = await clips.play({ from: 62, pace: 1, slowdown: 1, until: { pictures: 14 } });
  rightPictures(played);
  expect(played.shown.at(-1)?.frame).toBeGreaterThan(70);
  keepsTime(played, due);
});

test('a loop stays inside its stretch and comes round', async ({ clips }) => {
  await clips.open(await made('even-rate-b-frames'));
  const played = await clips.play({
    from: 0,
    pace: 1,
    slowdown: 1,
    until: { rounds: 2 },
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
  const played = await clips.play({ from: 130, pace: 1, slowdown: 1, until: 'the end' });
  rightPictures(played);
  expect(played.stopped).toBe('end at 149');
  expect(played.paused).toBe(149);
});
