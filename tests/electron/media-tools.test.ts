import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { findMediaTool } from '#electron/media/find-media-tool';
import { probeFrameTimes } from '#electron/media/probe-frame-times';
import { probeTracks } from '#electron/media/probe-tracks';
import { runMediaTool } from '#electron/media/run-media-tool';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-media-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));
afterEach(() => vi.unstubAllEnvs());

describe('finding a media tool', () => {
  it('takes what the environment names first', async () => {
    const usual = await findMediaTool('ffprobe');
    expect(usual).not.toBeNull();
    const named = path.join(folder, 'my-ffprobe');
    await writeFile(named, '#!/bin/sh\necho "ffprobe version 99.9 of mine"\n', { mode: 0o755 });
    vi.stubEnv('SUBMARK_FFPROBE', named);
    expect(await findMediaTool('ffprobe')).toEqual({ path: named, from: 'environment', version: '99.9' });
  });

  it('goes on to the next when the named one is not there or does not run', async () => {
    vi.stubEnv('SUBMARK_FFPROBE', path.join(folder, 'nothing'));
    expect((await findMediaTool('ffprobe'))?.from).not.toBe('environment');
  });

  it('works from the npm package alone', async () => {
    vi.stubEnv('PATH', folder);
    const found = await findMediaTool('ffprobe');
    // the package has no program for some platforms
    if (found) expect(found.from).toBe('npm package');
    else expect(process.platform).not.toBe('linux');
  });
});

describe('running a media tool', () => {
  const source = (seconds: number): string[] => [
    '-f',
    'lavfi',
    '-i',
    `testsrc2=size=64x64:rate=30:duration=${seconds}`,
  ];
  it('probes the frame times of a film it made', async () => {
    const file = path.join(folder, 'made.mp4');
    const made = await runMediaTool('ffmpeg', [
      '-y',
      ...source(1),
      '-c:v',
      'mpeg4',
      '-video_track_timescale',
      '30000',
      file,
    ]);
    expect(made.ok ? '' : made.error).toBe('');
    const probed = await probeFrameTimes(file, 1, { numerator: 1, denominator: 30_000 });
    expect(probed).toEqual({
      ok: true,
      value: {
        ticksPerSecond: 30_000,
        starts: Array.from({ length: 30 }, (_, i) => i * 1000),
        endTick: 30_000,
      },
    });
  });

  it('says in words what the tool complained about, without paths', async () => {
    const file = path.join(folder, 'text.mp4');
    await writeFile(file, 'this is no film at all '.repeat(50));
    const probed = await probeTracks(file);
    expect(probed).toMatchObject({ ok: false, error: { code: 'media-tool-failed' } });
    if (!probed.ok) expect(String(probed.error.detail.message)).toMatch(/text\.mp4|Invalid/);
    if (!probed.ok) expect(String(probed.error.detail.message)).not.toContain(folder);
  });

  it('opens no network address', async () => {
    const run = await runMediaTool('ffprobe', ['-v', 'error', '-i', 'http://127.0.0.1:9/film.mp4']);
    expect(run).toMatchObject({ ok: false, error: { code: 'media-tool-failed' } });
    if (!run.ok) expect(String(run.error.detail.message)).toMatch(/whitelist|Invalid argument/i);
  });

  it('ends at once when cancelled, and when its time is over', async () => {
    const endless = ['-re', ...source(600), '-f', 'null', '-'];
    const began = performance.now();
    const run = runMediaTool('ffmpeg', endless, { signal: AbortSignal.timeout(800) });
    expect(await run).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    expect(await runMediaTool('ffmpeg', endless, { timeoutMs: 500 })).toMatchObject({
      ok: false,
      error: { code: 'timed-out' },
    });
    // generous: a busy machine starts programs slowly; the film itself would last ten minutes
    expect(performance.now() - began).toBeLessThan(20_000);
  });

  it('ends a tool that says too much', async () => {
    const flood = [...source(20), '-f', 'framemd5', '-'];
    expect(await runMediaTool('ffmpeg', flood, { maxOutput: 2000 })).toMatchObject({
      ok: false,
      error: { code: 'too-large' },
    });
  });
});
