import { mkdtemp, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { errorWords } from '#core/host-contract/error-words';
import { findMediaTool } from '#electron/media/find-media-tool';
import { probeFrameTimes } from '#electron/media/probe-frame-times';
import { probeTracks } from '#electron/media/probe-tracks';
import { runMediaTool } from '#electron/media/run-media-tool';
import { timingOption } from '#electron/media/timing-option';
import { videoFormat } from '#electron/video/video-encoder';

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

  it.each([
    ['ffmpeg', 'Submark found no ffmpeg that starts here.', 'SUBMARK_FFMPEG to the path of ffmpeg'],
    ['ffprobe', 'Submark found no ffprobe that starts here.', 'SUBMARK_FFPROBE to the path of ffprobe'],
  ] as const)('says which is missing: %s', (name, what, todo) => {
    const words = errorWords({ code: 'no-media-tool', detail: { name } });
    expect(words.what).toBe(what);
    expect(words.todo).toContain(todo);
  });

  it('goes on to the next when the named one is not there or does not run', async () => {
    vi.stubEnv('SUBMARK_FFPROBE', path.join(folder, 'nothing'));
    expect((await findMediaTool('ffprobe'))?.from).not.toBe('environment');
  });

  it('asks again when the tool was killed instead of taking an older one for good, and keeps no half answer', async () => {
    const named = path.join(folder, 'killed-ffmpeg');
    // ends by SIGKILL as often as the file beside it says, then answers
    const killed = (times: number) => writeFile(`${named}.kills`, 'x'.repeat(times));
    const script = [
      '#!/bin/sh',
      `if [ -s "${named}.kills" ]; then truncate -s -1 "${named}.kills"; kill -9 $$; fi`,
      'case "$*" in *-encoders*) echo " V..... libx264  H.264";; *) echo "ffmpeg version 99.9 of mine";; esac',
    ];
    await writeFile(named, `${script.join('\n')}\n`, { mode: 0o755 });
    vi.stubEnv('SUBMARK_FFMPEG', named);
    await killed(3);
    expect((await findMediaTool('ffmpeg'))?.from).not.toBe('environment');
    await killed(1);
    expect((await findMediaTool('ffmpeg'))?.from).toBe('environment');
    await killed(1);
    expect(await videoFormat()).toMatchObject({ ok: false });
    expect(await videoFormat()).toEqual({ ok: true, value: 'mp4' });
  });

  it('works from the npm package alone, whose snapshot of 2018 does not know the newer name of an option', async () => {
    vi.stubEnv('PATH', folder);
    const found = await findMediaTool('ffmpeg');
    // the package has no program for some platforms
    if (!found) {
      expect(process.platform).not.toBe('linux');
      return;
    }
    if (found.from !== 'npm package') return;
    const film = ['-f', 'lavfi', '-i', 'testsrc2=duration=0.2', ...timingOption(found.version)];
    expect(await runMediaTool('ffmpeg', [...film, '-f', 'null', '-'])).toMatchObject({ ok: true });
  });

  it('names the option by release, and by the year where there is none', () => {
    const old = ['4.4.2-0ubuntu0.22.04.1', 'n5.0', 'N-47683-g0e8eb07980-static of 2018'];
    for (const version of old) expect(timingOption(version), version).toEqual(['-vsync', 'passthrough']);
    for (const version of ['5.1.6-0+deb12u1', 'n7.1', '8.0', 'N-120061-gf7c7d9e of 2025', 'unknown'])
      expect(timingOption(version), version).toEqual(['-fps_mode', 'passthrough']);
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

  it('uses no shell: a film whose name is a command, with quotes, spaces and a leading dash, stays a name', async () => {
    const command = 'touch made-by-a-shell';
    const named = path.join(folder, `-y "it's" $(${command}) \`${command}\`;${command} 🏊.mp4`);
    await rename(path.join(folder, 'made.mp4'), named);
    expect(await probeTracks(named)).toMatchObject({ ok: true, value: { container: 'MP4' } });
    expect(await readdir('.')).not.toContain('made-by-a-shell');
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
