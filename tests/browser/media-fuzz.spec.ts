import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { mediaClips } from '../fuzz/media-clips';
import { mediaUnderFire } from '../fuzz/media-targets';
import { runFuzz } from '../fuzz/run-fuzz';
import { expect, test } from './harness/clip-test';

/** A quick share, other seeds than the many thousands of tests/bench/safety/fuzz.ts; then each seed that broke a promise once. */
const cases = 40;
const firstSeed = 9_000_000;
const corpus = JSON.parse(
  readFileSync(new URL('../fuzz/found-media.json', import.meta.url), 'utf8'),
) as readonly { readonly seed: number; readonly what: string }[];

function writeScratch(name: string, bytes: Uint8Array): { path: string; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'submark-claims-'));
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return { path, remove: () => rmSync(folder, { recursive: true }) };
}

test('mangled film is refused with a typed error or taken whole, in the window and by the host’s tools', async ({
  clips,
}) => {
  const media = mediaUnderFire(await mediaClips(), (file) => clips.taste(file));
  const [inWindow, throughTools] = media.targets;
  try {
    if (!inWindow || !throughTools) throw new Error('nothing to feed');
    expect((await runFuzz(inWindow, cases, firstSeed, 'own')).found).toEqual([]);
    expect((await runFuzz(throughTools, cases / 8, firstSeed, 'own')).found).toEqual([]);
    for (const { seed, what } of corpus)
      expect((await runFuzz(inWindow, 1, seed, 'own')).found, `once found: ${what}`).toEqual([]);
  } finally {
    await media.close();
  }
});

test('a film that claims four thousand million pictures is refused at once, and the next opens', async ({
  clips,
}) => {
  const clip = (await mediaClips()).find(({ name }) => name === 'fuzz-index-first.mp4');
  test.skip(clip === undefined, 'no ffmpeg here to make the clip with');
  if (!clip) return;
  const claims = Buffer.from(clip.bytes);
  claims.writeUInt32BE(0xffff_ffff, claims.indexOf('stts', 0, 'latin1') + 12);
  const { path, remove } = writeScratch('claims.mp4', claims);
  const whole = writeScratch('whole.mp4', clip.bytes);
  try {
    const { facts, took } = await clips.taste(path);
    expect(facts).toMatchObject({ ok: false, error: { code: 'unreadable-index' } });
    // making so many entries would take minutes and more memory than there is
    expect(took).toBeLessThan(20_000);
    expect((await clips.taste(whole.path)).facts.ok).toBe(true);
  } finally {
    remove();
    whole.remove();
  }
});
