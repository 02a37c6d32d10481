import { closeSync, mkdirSync, openSync, readFileSync, rmSync, writeFileSync, writeSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from './harness/clip-test';
import { makeClip } from './harness/make-clips';
import { propertyClips } from './property-clips';

const scratch = fileURLToPath(new URL('../../.cache/clips/', import.meta.url));

async function made(name: string): Promise<string> {
  const clip = propertyClips.find((one) => one.name === name);
  if (!clip) throw new Error(`no clip is named ${name}`);
  const path = await makeClip(clip);
  test.skip(path === null, 'no ffmpeg here to make the clip with');
  return path ?? '';
}

function written(name: string, bytes: Uint8Array): string {
  mkdirSync(scratch, { recursive: true });
  writeFileSync(scratch + name, bytes);
  return scratch + name;
}

for (const [name, width, height, rotation] of [
  ['even-rate-b-frames', 640, 360, 0],
  ['rotate-90', 640, 360, 90],
  ['rotate-180', 640, 360, 180],
  ['rotate-270', 640, 360, 270],
  ['pixels-2-to-1', 640, 360, 0],
  ['turned-mirrored-and-pixels-2-to-1', 640, 360, 90],
] as const) {
  test(`${name}: shown as ${width} × ${height}, turned by ${rotation}°`, async ({ clips }) => {
    const facts = await clips.facts(await made(name));
    expect(facts).toMatchObject({ ok: true, value: { width, height, rotation, decodable: true } });
  });
}

test('facts are the same from a file in hand as from an address', async ({ clips }) => {
  const path = await made('variable-rate');
  const facts = await clips.facts(path);
  expect(await clips.facts(path, true)).toEqual(facts);
  expect(facts).toMatchObject({ ok: true, value: { evenRate: false, taggedSlowdown: null } });
});

test('slow motion is read from the capture-rate tag', async ({ clips }) => {
  expect(await clips.facts(await made('capture-rate-tag'))).toMatchObject({
    ok: true,
    value: { rate: 30, evenRate: true, taggedSlowdown: 8 },
  });
});

test('slow motion is read from the XML that a camera writes at the end of its film', async ({ clips }) => {
  const xml = Buffer.from(
    '<?xml version="1.0"?><NonRealTimeMeta><VideoFormat><VideoFrame captureFps="239.76p" formatFps="29.97p"/></VideoFormat></NonRealTimeMeta>',
  );
  const box = (name: string, content: Uint8Array): Buffer => {
    const head = Buffer.alloc(12);
    head.writeUInt32BE(12 + content.byteLength);
    head.write(name, 4);
    return Buffer.concat([head, content]);
  };
  const film = readFileSync(await made('even-rate-b-frames'));
  const path = written('camera-xml.mp4', Buffer.concat([film, box('meta', box('xml ', xml))]));
  for (const inHand of [false, true]) {
    const facts = await clips.facts(path, inHand);
    expect(facts.ok && facts.value.taggedSlowdown).toBeCloseTo(239.76 / 30, 9);
  }
});

test('quick film of a phone keeps the times of filming', async ({ clips }) => {
  const path = await made('quick-film-of-a-phone');
  expect(await clips.facts(path)).toMatchObject({ ok: true, value: { rate: 240, taggedSlowdown: 1 } });
});

test('a clip that starts at 10 s keeps its start', async ({ clips }) => {
  const facts = await clips.facts(await made('starts-at-10-s'));
  expect(facts.ok && (facts.value.table.starts[0] ?? 0) / facts.value.table.ticksPerSecond).toBeCloseTo(
    10,
    1,
  );
});

test('what is no film is told apart', async ({ clips }) => {
  const text = written(
    'words.mp4',
    new TextEncoder().encode('this is a shopping list, not a film'.repeat(40)),
  );
  expect(await clips.facts(text)).toEqual({ ok: false, error: { code: 'not-a-video', detail: {} } });
  expect(await clips.facts(text, true)).toMatchObject({ ok: false, error: { code: 'not-a-video' } });
  const nothing = written('nothing.mp4', new Uint8Array());
  expect(await clips.facts(nothing)).toMatchObject({ ok: false, error: { code: 'empty-file' } });
  expect(await clips.facts(nothing, true)).toMatchObject({ ok: false, error: { code: 'empty-file' } });
  expect(await clips.facts(`${scratch}gone.mp4`)).toMatchObject({
    ok: false,
    error: { code: 'clip-missing' },
  });
});

test('a film cut off before its index says so; cut off after it, the whole pictures there are stay', async ({
  clips,
}) => {
  const indexLast = readFileSync(await made('even-rate-b-frames'));
  const noIndex = written('no-index.mp4', indexLast.subarray(0, indexLast.length >> 1));
  expect(await clips.facts(noIndex)).toMatchObject({ ok: false, error: { code: 'truncated' } });

  const indexFirst = readFileSync(await made('index-at-the-front'));
  const half = written('half-a-film.mp4', indexFirst.subarray(0, Math.round(indexFirst.length * 0.6)));
  const facts = await clips.open(half);
  const frames = facts.table.starts.length;
  expect(frames).toBeGreaterThan(20);
  expect(frames + (facts.lostPictures ?? 0)).toBe(150);
  const whole = frames - 6;
  const seen = await clips.walk(
    Array.from({ length: whole }, (_, n) => whole - 1 - n),
    -1,
  );
  expect(seen.map(({ number }) => number)).toEqual(seen.map(({ frame }) => frame));
});

test('a film whose list goes on in fragments is left to the host, as part of it would be lost here', async ({
  clips,
}) => {
  const whole = propertyClips.find(({ name }) => name === 'even-rate-b-frames');
  if (!whole) throw new Error('no such clip');
  const remux = { output: ['-movflags', 'frag_keyframe'] };
  const path = await makeClip({ ...whole, name: 'partly-fragmented', remux });
  expect(await clips.facts(path ?? '')).toMatchObject({ ok: false, error: { code: 'unreadable-index' } });
});

test('a picture cut in its own coding has the size it shows, not the one its container says', async ({
  clips,
}) => {
  const cropped = await makeClip({
    ...{ name: 'cropped', width: 320, height: 180, rate: 30, pictures: 12, extension: 'mp4' },
    encode: ['-c:v', 'libx264', '-preset', 'veryfast', '-x264-params', 'crop-rect=0,12,22,8'],
  });
  expect(await clips.facts(cropped ?? '')).toMatchObject({ ok: true, value: { width: 298, height: 160 } });
});

test('a stream with wrong bytes in it is left to the host, which reads on behind them', async ({ clips }) => {
  const bytes = readFileSync(await made('transport-stream'));
  bytes.fill(0x55, bytes.length >> 1, (bytes.length >> 1) + 400);
  expect(await clips.facts(written('wrong-bytes.ts', bytes))).toMatchObject({
    ok: false,
    error: { code: 'unreadable-index' },
  });
});

test('a stream that begins in the middle of a packet is left to the host too', async ({ clips }) => {
  const path = await made('transport-stream');
  const cut = written('mid-packet.ts', readFileSync(path).subarray(77));
  expect(await clips.facts(cut)).toMatchObject({
    ok: false,
    error: { code: 'unsupported-codec', detail: { container: 'MPEG-TS' } },
  });
});

test('of a file of 20 GB whose index is at its very end, a few megabytes are read', async ({
  clips,
  server,
}) => {
  const bytes = readFileSync(await made('even-rate-b-frames'));
  const index = bytes.indexOf('moov', 0, 'latin1') - 4;
  const path = `${scratch}twenty-gigabytes.mp4`;
  const nothing = Buffer.alloc(16);
  nothing.writeUInt32BE(1, 0);
  nothing.write('free', 4, 'latin1');
  nothing.writeBigUInt64BE(20n * 2n ** 30n, 8);
  // sparse: the disk holds the film only
  const file = openSync(path, 'w');
  try {
    writeSync(file, bytes, 0, index, 0);
    writeSync(file, nothing, 0, 16, index);
    writeSync(file, bytes, index, bytes.length - index, index + 20 * 2 ** 30);
    const before = server.sent();
    const facts = await clips.open(path);
    expect(facts.table.starts).toHaveLength(150);
    const frames = [0, 149, 75, 74, 73];
    expect((await clips.walk(frames, 0)).map(({ number }) => number)).toEqual(frames);
    await clips.close();
    expect(server.sent() - before).toBeLessThan(20e6);
  } finally {
    closeSync(file);
    rmSync(path);
  }
});

test('a film with sound only has no video track', async ({ clips }) => {
  const path = await made('even-rate-b-frames');
  // a handler type of sound instead of film makes the one track a foreign one
  const bytes = Buffer.from(readFileSync(path));
  bytes.write('soun', bytes.indexOf('vide', bytes.indexOf('hdlr', 0, 'latin1'), 'latin1'), 'latin1');
  const facts = await clips.facts(written('sound-only.mp4', bytes));
  expect(facts).toMatchObject({ ok: false, error: { code: 'no-video-track' } });
});
