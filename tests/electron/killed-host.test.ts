import { readdirSync } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Disk, realDisk } from '#electron/host/atomic-file';
import { createHost } from '#electron/host/create-host';
import { aHost, type HostUnderTest, must } from './a-host';

let under: HostUnderTest;
beforeEach(async () => {
  under = await aHost();
});
afterEach(() => under.close());
const inLibrary = (...parts: string[]): string => path.join(under.library, ...parts);

describe('what a killed program left', () => {
  it('is removed at the next start or save, and nothing else is', async () => {
    const { swim, revision } = await under.addSwim();
    const note = (words: string) => ({ ...swim, card: { ...swim.card, note: words } });
    const saved = must(await under.ask('swim/write', { swim: note('one'), baseRevision: revision }));
    const half = [
      ['exports', '.0f8fad5b-d9cb-469f-a165-70867728950e.part'],
      ['.cache', 'copies', 'swim-1.abc.film.0f8fad5b-d9cb-469f-a165-70867728950e.part'],
      ['swims', 'swim-1', 'swim.json.2917364512'],
      ['swims', 'swim-1', '.generations', 'swim.json.00000002.917364512'],
    ];
    const stay = [
      ['exports', '.notes.part'],
      ['exports', 'half.part'],
      ['swims', 'swim-1', 'swim.json.bak'],
    ];
    for (const parts of [...half, ...stay]) {
      await mkdir(path.dirname(inLibrary(...parts)), { recursive: true });
      await writeFile(inLibrary(...parts), '{"half":');
    }
    const next = must(await createHost({ libraryPath: under.library, samplesPath: null }));
    must(await next.run('swim/write', { swim: note('two'), baseRevision: saved.revision }));
    await next.close();
    const left = readdirSync(under.library, { recursive: true, encoding: 'utf8' });
    for (const parts of half) expect(left).not.toContain(path.join(...parts));
    for (const parts of stay) expect(left).toContain(path.join(...parts));
    expect(left).toContain(path.join('swims', 'swim-1', '.generations', 'swim.json.00000001'));
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
