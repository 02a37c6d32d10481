import { mkdir, readdir, readFile, rm } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { type Disk, realDisk } from '#electron/disk/atomic-file';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { aHost, type HostUnderTest, must, streamOf } from './a-host';

/** A disk that works until it is told which error to give. */
function failingDisk(): Disk & { fault: string | null; on: 'read' | 'write' } {
  const fail = (code: string): never => {
    throw Object.assign(new Error(`${code}: injected`), { code });
  };
  const disk = {
    fault: null as string | null,
    on: 'write' as 'read' | 'write',
    readText: async (file: string) => {
      if (disk.fault && disk.on === 'read') fail(disk.fault);
      return realDisk.readText(file);
    },
    writeWhole: async (file: string, text: string) => {
      if (disk.fault && disk.on === 'write') fail(disk.fault);
      return realDisk.writeWhole(file, text);
    },
  };
  return disk;
}

let under: HostUnderTest | null = null;
afterEach(async () => under?.close());

describe('when the disk fails', () => {
  it.each([
    ['ENOSPC', 'disk-full'],
    ['EDQUOT', 'disk-full'],
    ['EROFS', 'read-only'],
    ['EACCES', 'cannot-write'],
    ['EIO', 'cannot-write'],
    // a rename refused: another program holds the file, or the disk is another one
    ['EBUSY', 'cannot-write'],
    ['EPERM', 'cannot-write'],
    ['EXDEV', 'cannot-write'],
  ])('%s in a save is told as %s; the old version stays and the next save works', async (fault, code) => {
    const disk = failingDisk();
    under = await aHost({ disk });
    const { swim, revision } = await under.addSwim();
    const file = path.join(under.library, 'swims', 'swim-1', 'swim.json');
    const before = await readFile(file, 'utf8');
    const marked = { ...swim, card: { ...swim.card, note: 'new' } };
    disk.fault = fault;
    expect(await under.ask('swim/write', { swim: marked, baseRevision: revision })).toMatchObject({
      ok: false,
      error: { code, detail: { system: fault } },
    });
    expect(await readFile(file, 'utf8')).toBe(before);
    disk.fault = null;
    must(await under.ask('swim/write', { swim: marked, baseRevision: revision }));
    expect(must(await under.ask('swim/read', { id: 'swim-1' })).swim.card.note).toBe('new');
  });

  it('a slow disk lets no save overtake another: of two over one version the later is a conflict, and both stay', async () => {
    const disk: Disk = {
      ...realDisk,
      writeWhole: async (file, text) => {
        await new Promise((resolve) => setTimeout(resolve, 40));
        await realDisk.writeWhole(file, text);
      },
    };
    under = await aHost({ disk });
    const { ask, library } = under;
    const { swim, revision } = await under.addSwim();
    const save = (note: string) =>
      ask('swim/write', { swim: { ...swim, card: { ...swim.card, note } }, baseRevision: revision });
    const [first, second] = await Promise.all([save('first'), save('second')]);
    must(first);
    expect(second).toMatchObject({ ok: false, error: { code: 'conflict' } });
    const folder = path.join(library, 'swims', 'swim-1');
    const kept = (await readdir(folder)).filter((name) => name.startsWith('swim.conflict-'));
    const notes = await Promise.all(
      ['swim.json', ...kept].map(
        async (name) => JSON.parse(await readFile(path.join(folder, name), 'utf8')).card.note as string,
      ),
    );
    expect(notes).toEqual(['first', 'second']);
  });

  it('what can’t be kept aside or renamed leaves the old file and nothing half made', async () => {
    under = await aHost();
    const { swim, revision } = await under.addSwim();
    const folder = path.join(under.library, 'swims', 'swim-1');
    // a folder in the place of the version that is kept aside
    const blocked = path.join(folder, '.generations', 'swim.json.00000001', 'in the way');
    await mkdir(blocked, { recursive: true });
    const before = await readFile(path.join(folder, 'swim.json'), 'utf8');
    const marked = { ...swim, card: { ...swim.card, note: 'new' } };
    expect(await under.ask('swim/write', { swim: marked, baseRevision: revision })).toMatchObject({
      ok: false,
      error: { code: 'cannot-write' },
    });
    expect(await readFile(path.join(folder, 'swim.json'), 'utf8')).toBe(before);
    await expect(realDisk.writeWhole(path.join(folder, '.generations'), 'text')).rejects.toThrow();
    const left = await readdir(folder, { recursive: true });
    expect(left.filter((name) => /\.\d{6,}$/.test(name) && !name.endsWith('.00000001'))).toEqual([]);
    await rm(path.join(folder, '.generations'), { recursive: true });
    must(await under.ask('swim/write', { swim: marked, baseRevision: revision }));
  });

  it('EACCES in reading is a problem on the shelf, not a broken shelf', async () => {
    const disk = failingDisk();
    under = await aHost({ disk });
    await under.addSwim();
    disk.on = 'read';
    disk.fault = 'EACCES';
    expect(await under.ask('swim/read', { id: 'swim-1' })).toMatchObject({ error: { code: 'cannot-read' } });
  });

  it('a swim that can’t be made gives its clip back for another try', async () => {
    const disk = failingDisk();
    under = await aHost({ disk });
    const { clipId } = must(await under.host.clips.arrive('clip.mp4', streamOf('film')));
    disk.fault = 'ENOSPC';
    expect(await under.ask('swim/create', { swim: aSwim(), clipId })).toMatchObject({
      error: { code: 'disk-full' },
    });
    disk.fault = null;
    const made = must(await under.ask('swim/create', { swim: aSwim(), clipId }));
    expect(await readFile(path.join(under.library, 'swims', made.swim.id, 'clip.mp4'), 'utf8')).toBe('film');
  });

  it('an error that is no file error is a bug and is thrown', async () => {
    const disk: Disk = {
      ...realDisk,
      writeWhole: () => Promise.reject(new TypeError('a bug')),
    };
    const faulty = await aHost({ disk });
    under = faulty;
    await expect(faulty.addSwim()).rejects.toThrow('a bug');
  });

  it('an upload that breaks off leaves nothing behind', async () => {
    under = await aHost();
    const broken = new ReadableStream<Uint8Array>({
      start(controller) {
        controller.enqueue(new Uint8Array(1000));
        controller.error(new Error('the window went away'));
      },
    });
    expect(await under.host.clips.arrive('a.mp4', broken)).toMatchObject({ error: { code: 'cancelled' } });
    expect(await readdir(path.join(under.library, '.arriving'))).toEqual([]);
  });
});
