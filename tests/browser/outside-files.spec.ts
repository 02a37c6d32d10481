import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from './harness/clip-test';
import { fingerprintIndependently, probeStarts } from './harness/independent-decode';

const outside =
  process.env.SUBMARK_OUTSIDE_DATA ?? fileURLToPath(new URL('../../../shared/outside-data', import.meta.url));

const file = (name: string): string => `${outside}/odd-files/${name}`;

const isHere = existsSync(`${outside}/odd-files`);
let notRun = 0;

/** A check of films that others made, which carry their own licences and lie beside the project: counted where they are not there. */
const check: (title: string, body: Parameters<typeof test>[2]) => void = isHere
  ? (title, body) => test(title, body)
  : () => {
      notRun += 1;
    };

/** Sample times (µs) of the one film track of a dump, in showing order. */
function dumpedTimes(path: string): number[] {
  const tracks = readFileSync(path, 'utf8')
    .split(/^track /m)
    .slice(1);
  const film = tracks.find((track) => /sampleMimeType = video/.test(track)) ?? '';
  return [...film.matchAll(/^ {4}time = (-?\d+)/gm)].map((found) => Number(found[1])).sort((a, b) => a - b);
}

for (const [name, decodable] of [
  ['h265_bframes.mp4', false],
  ['sample.mkv', true],
  ['sample_android_slow_motion.mp4', true],
  ['sample_h264.ts', true],
  ['sample_mdat_too_long.mp4', true],
  ['sample_rotate_and_reflect.mp4', true],
] as const) {
  check(`${name}: the frame table is the dump's sample times`, async ({ clips }) => {
    const path = file(`androidx/${name}`);
    const facts = await clips.facts(path);
    if (!facts.ok) throw new Error(facts.error.code);
    const { starts, ticksPerSecond } = facts.value.table;
    const dumped = dumpedTimes(`${outside}/odd-files/androidx/dumps/${name}.0.dump`);
    expect(dumped.length).toBeGreaterThan(0);
    expect(starts.length).toBe(dumped.length);
    // the dump of a transport stream counts from its first sample
    const shift = name.endsWith('.ts') ? ((starts[0] ?? 0) / ticksPerSecond) * 1e6 - (dumped[0] ?? 0) : 0;
    starts.forEach((tick, n) => {
      expect(Math.abs((tick / ticksPerSecond) * 1e6 - shift - (dumped[n] ?? 0))).toBeLessThanOrEqual(1);
    });
    expect(facts.value.decodable).toBe(decodable);
  });
}

for (const name of [
  'androidx/bbb_800x640_768kbps_30fps_avc_2b_firstpts_10_sec.mp4',
  'androidx/edit_list_positive_shift.mp4',
  'androidx/sample_12_5fps_720p_1s.mp4',
  'androidx/sample_portrait.mp4',
  'androidx/testvid_1022ms.mp4',
  'mediabunny/cursed-vfr.mp4',
  'mediabunny/rotate-buck-bunny.mp4',
]) {
  check(
    `${name}: frames start when another demuxer says, and every one is shown both ways`,
    async ({ clips }) => {
      const path = file(name);
      const facts = await clips.open(path);
      const probed = await probeStarts(path);
      test.skip(probed === null, 'no ffprobe here to compare with');
      const { starts, ticksPerSecond } = facts.table;
      expect(starts.length).toBe(probed?.length);
      // ffprobe leaves the edit list of a fragmented file out, which shifts every start alike
      const shift = name.endsWith('bunny.mp4') ? (probed?.[0] ?? 0) - (starts[0] ?? 0) / ticksPerSecond : 0;
      starts.forEach((tick, n) => {
        expect(Math.abs(tick / ticksPerSecond + shift - (probed?.[n] ?? Number.NaN))).toBeLessThan(1.1e-6);
      });
      const all = starts.map((_, n) => n);
      await clips.walk(all, 1);
      await clips.walk([...all].reverse(), -1);
      expect(await clips.close()).toBe(0);
    },
  );
}

check('cursed-vfr: 63 frames at a median of 30.1650 a second', async ({ clips }) => {
  const facts = await clips.facts(file('mediabunny/cursed-vfr.mp4'));
  expect(facts.ok && facts.value.table.starts.length).toBe(63);
  expect(facts.ok && facts.value.evenRate).toBe(false);
  expect(facts.ok && facts.value.rate).toBeCloseTo(30.165, 3);
});

check('rotate-buck-bunny is shown upright, 1080 × 1920', async ({ clips }) => {
  expect(await clips.facts(file('mediabunny/rotate-buck-bunny.mp4'))).toMatchObject({
    ok: true,
    value: { width: 1080, height: 1920, rotation: 90 },
  });
});

check('annex-b: of 745 pictures promised the 5 that are whole are frames', async ({ clips }) => {
  // The sixth lacks its last 437 bytes. ffmpeg patches it up; Chromium's decoder refuses it, so it is no frame here.
  const path = file('mediabunny/annex-b.mp4');
  const facts = await clips.open(path);
  const probed = await probeStarts(path);
  expect(facts.lostPictures).toBe(740);
  expect(facts.table.starts).toEqual([0, 80, 112, 304, 6864]);
  if (probed) expect(probed.slice(0, 5)).toEqual(facts.table.starts.map((tick) => tick / 16_000));
  await clips.walk([0, 1, 2, 3, 4, 3, 2, 1, 0], 0);
  expect(await clips.close()).toBe(0);
});

check('frames.webm: frame n shows what another decoder shows as its n-th picture', async ({ clips }) => {
  const path = file('mediabunny/frames.webm');
  const facts = await clips.open(path);
  expect(facts.table.starts.length).toBe(100);
  const prints = await fingerprintIndependently(path);
  test.skip(prints === null, 'no ffmpeg here to compare with');
  if (prints === null) return;
  for (const frames of [[...prints.keys()], [...prints.keys()].reverse(), [77, 3, 99, 0, 41, 40, 62]]) {
    for (const { frame, print } of await clips.fingerprints(frames)) {
      const distances = prints.map((other) => distance(print, other));
      const nearest = distances.indexOf(Math.min(...distances));
      expect(nearest).toBe(frame);
    }
  }
});

function distance(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, value, place) => sum + Math.abs(value - (other[place] ?? 0)), 0);
}

check('the slow-motion tag of a phone reads as eight times slower', async ({ clips }) => {
  const facts = await clips.facts(file('androidx/sample_android_slow_motion.mp4'));
  expect(facts.ok && facts.value.taggedSlowdown).toBeCloseTo(8, 9);
});

check('what this window can not read is said by its kind', async ({ clips }) => {
  expect(await clips.facts(file('androidx/sample.avi'))).toEqual({
    ok: false,
    error: { code: 'unsupported-codec', detail: { container: 'AVI' } },
  });
  expect(await clips.facts(file('androidx/sample_h262_mpeg_audio.ts'))).toEqual({
    ok: false,
    error: { code: 'unsupported-codec', detail: { container: 'MPEG-TS' } },
  });
  expect(await clips.tryOpen(file('androidx/h265_bframes.mp4'))).toMatchObject({
    ok: false,
    error: { code: 'unsupported-codec' },
  });
});

if (!isHere)
  test('films that others made', () => {
    test.skip(
      true,
      `${notRun} checks were not run: no films at ${outside}. Set SUBMARK_OUTSIDE_DATA to run them.`,
    );
  });
