import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { success } from '#core/host-contract/host-error';
import { operations } from '#core/host-contract/operations';
import { realDisk } from '#electron/disk/atomic-file';
import { createHost } from '#electron/host/create-host';
import { Remembered } from '#electron/host/remembered';

let folder: string;
let file: string;
beforeEach(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-remembered-'));
  file = path.join(folder, 'window', 'remembered.json');
});
afterEach(() => rm(folder, { recursive: true, force: true }));

describe('what windows remember', () => {
  it('is kept in the coach’s settings, for whichever library and window is opened next', async () => {
    const open = async (library: string) => {
      const made = await createHost({
        libraryPath: path.join(folder, library),
        samplesPath: null,
        rememberedFile: file,
      });
      if (!made.ok) throw new Error(made.error.code);
      return made.value;
    };
    const first = await open('one');
    expect(await first.run('memory/read', {})).toEqual(success({ kept: {} }));
    expect(await first.run('memory/keep', { key: 'submark.theme', text: 'glare' })).toEqual(success({}));
    await first.run('memory/keep', { key: 'submark-pair-a b', text: '{}' });
    await first.run('memory/keep', { key: 'submark-pair-a b', text: null });
    await first.close();
    const second = await open('two');
    expect(await second.run('memory/read', {})).toEqual(success({ kept: { 'submark.theme': 'glare' } }));
    await second.close();
  });

  it('takes nothing but what windows remember, and no more of it than a file can hold', async () => {
    const input = operations['memory/keep'].input;
    for (const key of ['other', 'submark-unsaved-a', 'submark-pair-a', 'submark-pair-../x b', '__proto__'])
      expect(input.safeParse({ key, text: 'x' }).success, key).toBe(false);
    expect(input.safeParse({ key: 'submark.theme', text: 'x'.repeat(20_001) }).success).toBe(false);
    const remembered = new Remembered(file, realDisk);
    for (let n = 0; n < 305; n++) await remembered.keep(`submark-pair-a${n} b`, '{}');
    const kept = Object.keys(await new Remembered(file, realDisk).read());
    expect([kept.length, kept[0], kept.at(-1)]).toEqual([300, 'submark-pair-a5 b', 'submark-pair-a304 b']);
  });

  it('writes one after another and ends with the last', async () => {
    const remembered = new Remembered(file, realDisk);
    await Promise.all(['dim', 'light', 'glare'].map((text) => remembered.keep('submark.theme', text)));
    expect(await new Remembered(file, realDisk).read()).toEqual({ 'submark.theme': 'glare' });
  });

  it('begins afresh with a file that can’t be made sense of', async () => {
    const remembered = new Remembered(file, realDisk);
    await remembered.keep('submark.theme', 'dim');
    await writeFile(file, (await readFile(file, 'utf8')).slice(0, 40));
    const next = new Remembered(file, realDisk);
    expect(await next.read()).toEqual({});
    expect(await next.keep('submark.theme', 'light')).toEqual(success(null));
    expect(await new Remembered(file, realDisk).read()).toEqual({ 'submark.theme': 'light' });
  });

  it('says when it can’t be written', async () => {
    await writeFile(path.join(folder, 'window'), 'a file where the folder should be');
    expect((await new Remembered(file, realDisk).keep('submark.theme', 'dim')).ok).toBe(false);
  });
});
