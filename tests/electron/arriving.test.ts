import { readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { JobLook } from '#core/host-contract/operations/job-operations';
import { saveUnderFreeName } from '#electron/disk/free-name';
import { aHost, type HostUnderTest, must, streamOf } from './a-host';

let under: HostUnderTest;
let outside: string;
beforeEach(async () => {
  under = await aHost();
  outside = await mkdtemp(path.join(tmpdir(), 'submark-outside-'));
});
afterEach(async () => {
  await under.close();
  await rm(outside, { recursive: true, force: true });
});

const arriving = (): string[] => readdirSync(path.join(under.library, '.arriving'));

/** Bytes that come when the test says so. */
function slowly(): { body: ReadableStream<Uint8Array>; send(bytes: number): void; end(): void } {
  let from: ReadableStreamDefaultController<Uint8Array> | null = null;
  const body = new ReadableStream<Uint8Array>({
    start: (controller) => {
      from = controller;
    },
  });
  return {
    body,
    send: (bytes) => from?.enqueue(new Uint8Array(bytes)),
    end: () => from?.close(),
  };
}

it('counts what has arrived of a clip, whichever way it comes, and forgets the count at its end', async () => {
  const { body, send, end } = slowly();
  const bytes = async (): Promise<number | null> =>
    must(await under.ask('clip/arriving', { arrivalId: 'one' })).bytes;
  expect(await bytes()).toBeNull();
  const arrived = under.host.clips.arrive('a.mp4', body, 'one');
  send(1000);
  await vi.waitFor(async () => expect(await bytes()).toBe(1000));
  send(500);
  await vi.waitFor(async () => expect(await bytes()).toBe(1500));
  end();
  expect(must(await arrived).fingerprint.bytes).toBe(1500);
  expect(await bytes()).toBeNull();
});

it('stops a clip that is arriving when it is asked to, and leaves nothing of it', async () => {
  const { body, send } = slowly();
  const arrived = under.host.clips.arrive('a.mp4', body, 'one');
  send(1000);
  await vi.waitFor(() => expect(arriving()).toHaveLength(1));
  must(await under.ask('clip/stop-arriving', { arrivalId: 'one' }));
  expect(await arrived).toMatchObject({ error: { code: 'cancelled' } });
  expect(arriving()).toEqual([]);
});

it('copies a clip that was referred to into the library, under the same name', async () => {
  const film = path.join(outside, 'film.mp4');
  await writeFile(film, 'a film');
  const { clipId } = must(await under.ask('clip/refer', { path: film }));
  const { jobId } = must(await under.ask('clip/copy', { clipId }));
  const look = async (): Promise<JobLook> => must(await under.ask('job/look', { jobId }));
  await vi.waitFor(async () => expect((await look()).state).toBe('done'));
  expect(await look()).toMatchObject({ result: { clipId, name: 'film.mp4' } });
  const copy = under.host.clips.fileOf(clipId) ?? '';
  expect(path.dirname(copy)).toBe(path.join(under.library, '.arriving'));
  expect(readFileSync(copy, 'utf8')).toBe('a film');
  expect(readFileSync(film, 'utf8')).toBe('a film');
  must(await under.ask('clip/discard', { clipId }));
  expect(arriving()).toEqual([]);
});

it('writes an export as it comes, never more than the limit, and never half of it', async () => {
  const folder = path.join(under.library, 'exports');
  const { body, send } = slowly();
  const saved = saveUnderFreeName(folder, 'large.png', body, 1000);
  send(800);
  // it is on its way to the disk before its end is known
  await vi.waitFor(() => expect(readdirSync(folder)).toHaveLength(1));
  send(800);
  expect(await saved).toMatchObject({ error: { code: 'too-large' } });
  expect(readdirSync(folder)).toEqual([]);
  expect(must(await saveUnderFreeName(folder, 'a.png', streamOf('png'), 1000)).name).toBe('a.png');
  expect(must(await saveUnderFreeName(folder, 'a.png', streamOf('png'), 1000)).name).toBe('a 2.png');
});

it('tells whoever listens of the jobs that run, until they have ended', async () => {
  const heard: (readonly (number | null)[])[] = [];
  const listened = await aHost({ surroundings: { onWork: (shares) => heard.push(shares) } });
  const film = path.join(outside, 'film.mp4');
  await writeFile(film, 'a film');
  const { clipId } = must(await listened.ask('clip/refer', { path: film }));
  must(await listened.ask('clip/copy', { clipId }));
  await vi.waitFor(() => expect(heard.at(-1)).toEqual([]));
  expect(heard[0]).toEqual([null]);
  expect(heard).toContainEqual([1]);
  await listened.close();
});
