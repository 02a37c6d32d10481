import { decodeIndependently, probeStarts } from './harness/independent-decode';
import { makeClip } from './harness/make-clips';
import { expect, test } from './harness/clip-test';
import { propertyClips } from './property-clips';

/** Park–Miller steps: the same jumps on every run. */
function jumps(count: number, below: number): number[] {
  let state = 20_011;
  return Array.from({ length: count }, () => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  });
}

for (const clip of propertyClips) {
  test(`${clip.name}: frame n is the same picture forward, backward, at random and in another decoder`, async ({
    clips,
  }) => {
    const path = await makeClip(clip);
    test.skip(path === null, 'no ffmpeg here to make the clip with');
    if (path === null) return;
    const isFrame = (number: number | null): boolean => !clip.twins?.includes(number ?? -1);
    const decoded = await decodeIndependently(path);
    if (decoded === null) throw new Error('a clip was made but can not be decoded independently');
    const truth = decoded.filter(isFrame);
    const facts = await clips.open(path);
    const frames = facts.table.starts.length;
    expect(frames).toBe(truth.length);

    const all = Array.from({ length: frames }, (_, n) => n);
    const walks = [
      await clips.walk(all, 1),
      await clips.walk([...all].reverse(), -1),
      await clips.walk(jumps(60, frames), 0),
    ];
    for (const seen of walks) {
      expect(seen.map(({ frame, number }) => [frame, number])).toEqual(
        seen.map(({ frame }) => [frame, truth[frame]]),
      );
    }
    // the numbers themselves: one more each frame, so neither decoder repeats or leaves out a picture
    const first = truth[0] ?? -1;
    expect(truth).toEqual(
      Array.from({ length: 1000 }, (_, n) => first + n)
        .filter(isFrame)
        .slice(0, frames),
    );
    expect(await clips.close()).toBe(0);

    const starts = ((await probeStarts(path)) ?? []).filter((_, n) => isFrame(decoded[n] ?? null));
    expect(starts.length).toBe(frames);
    const { ticksPerSecond } = facts.table;
    facts.table.starts.forEach((tick, n) => {
      // ffprobe prints microseconds
      expect(Math.abs(tick / ticksPerSecond - (starts[n] ?? Number.NaN))).toBeLessThan(1.1e-6);
    });
  });
}
