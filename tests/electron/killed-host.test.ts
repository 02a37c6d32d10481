import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { mkdir, readFile, utimes, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Disk, realDisk } from '#electron/disk/atomic-file';
import { createHost } from '#electron/host/create-host';
import { draftName } from '#electron/disk/drafts';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { aHost, type HostUnderTest, must, streamOf } from './a-host';

let under: HostUnderTest;
beforeEach(async () => {
  under = await aHost();
});
afterEach(() => under.close());
const inLibrary = (...parts: string[]): string => path.join(under.library, ...parts);

describe('what a killed program left', () => {
  it('is removed at the next start or save; what another program is at, and all else, stays', async () => {
    const { swim, revision } = await under.addSwim();
    const note = (words: string) => ({ ...swim, card: { ...swim.card, note: words } });
    const saved = must(await under.ask('swim/write', { swim: note('one'), baseRevision: revision }));
    const id = '0f8fad5b-d9cb-469f-a165-70867728950e';
    const computer = draftName('').slice(0, 8);
    const ended = `${computer}-${spawnSync(process.execPath, ['-v']).pid}-00000001-${id}`;
    // a program that runs, but is not this one
    const running = `${computer}-${process.ppid}-00000001-${id}`;
    const elsewhere = `0badcafe-1-00000001-${id}`;
    const places = (of: string): string[][] => [
      ['exports', `.${of}.part`],
      ['.cache', 'copies', `swim-1.abc.film.${of}.part`],
      ['.arriving', of],
    ];
    const old = [
      ['exports', `.${id}.part`],
      ['.arriving', elsewhere.replace('0badcafe', '00c0ffee')],
      ['swims', 'swim-1', 'swim.json.2917364512'],
      ['swims', 'swim-1', '.generations', 'swim.json.00000002.917364512'],
    ];
    const half = [...places(ended), ...old];
    const stay = [
      ...places(running),
      ...places(elsewhere),
      ['exports', '.notes.part'],
      ['exports', 'half.part'],
      ['swims', 'swim-1', 'swim.json.bak'],
      ['swims', 'swim-1', 'swim.json.1117364512'],
    ];
    for (const parts of [...half, ...stay]) {
      await mkdir(path.dirname(inLibrary(...parts)), { recursive: true });
      await writeFile(inLibrary(...parts), '{"half":');
    }
    const days = new Date(Date.now() - 2 * 86_400_000);
    for (const parts of old) await utimes(inLibrary(...parts), days, days);
    const next = must(await createHost({ libraryPath: under.library, samplesPath: null }));
    must(await next.run('swim/write', { swim: note('two'), baseRevision: saved.revision }));
    await next.close();
    const left = readdirSync(under.library, { recursive: true, encoding: 'utf8' });
    for (const parts of half) expect(left).not.toContain(path.join(...parts));
    for (const parts of stay) expect(left).toContain(path.join(...parts));
    expect(left).toContain(path.join('swims', 'swim-1', '.generations', 'swim.json.00000001'));
  });

  it('is not what another program on the same library is still being sent', async () => {
    const sent = must(await under.host.clips.arrive('clip.mp4', streamOf('waits for its card')));
    const second = must(await createHost({ libraryPath: under.library, samplesPath: null }));
    await second.close();
    must(await under.ask('swim/create', { swim: aSwim(), clipId: sent.clipId }));
  });
});

describe('the good generations', () => {
  it('stay when a save is tried again and again on a full disk', async () => {
    let full = false;
    const disk: Disk = {
      ...realDisk,
      writeWhole: async (file, text) => {
        if (full) throw Object.assign(new Error('ENOSPC: injected'), { code: 'ENOSPC' });
        await realDisk.writeWhole(file, text);
      },
    };
    await under.close();
    under = await aHost({ disk });
    let { swim, revision } = await under.addSwim();
    const save = async (words: string) => {
      swim = { ...swim, card: { ...swim.card, note: words } };
      const answer = await under.ask('swim/write', { swim, baseRevision: revision });
      if (answer.ok) revision = answer.value.revision;
      return answer;
    };
    for (let i = 0; i < 6; i++) must(await save(`good ${i}`));
    full = true;
    for (let i = 0; i < 12; i++) expect(await save(`tried ${i}`)).toMatchObject({ ok: false });
    const folder = inLibrary('swims', 'swim-1', '.generations');
    const notes = await Promise.all(
      readdirSync(folder)
        .sort()
        .map(async (name) => JSON.parse(await readFile(path.join(folder, name), 'utf8')).card.note as string),
    );
    expect(notes).toEqual(['good 1', 'good 2', 'good 3', 'good 4', 'good 5']);
  });
});
