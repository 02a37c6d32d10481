import { existsSync, readdirSync } from 'node:fs';
import { readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { drillLibrary } from '#core/practice/drill-library';
import { type Trial, trialFileVersion } from '#core/practice/trial-schema';
import { noTags } from '#core/swim-file/condition-tags';
import { beforeEach, describe, expect, it } from 'vitest';
import { erasedSchema, erasePlanSchema } from '#core/host-contract/operations/upkeep-operations';
import { type Squad, squadFileVersion } from '#core/swim-file/squad-schema';
import { aPractice } from '#tests/shared-core/practice/a-practice';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { must, streamOf } from './a-host';
import { filesUnder, libraryUnderUpkeep } from './library-under-upkeep';

const { under, beside, inLibrary, ended, resultOf, swimOf } = libraryUnderUpkeep();

describe('erasing a swimmer', () => {
  const swimmer = (id: string, name: string): Squad['swimmers'][number] => ({
    id,
    name,
    birthYear: null,
    bodyTable: null,
    streamlineMetres: null,
    consent: null,
    targets: [],
    invented: true,
  });
  const squad: Squad = {
    format: 'submark-squad',
    version: squadFileVersion,
    swimmers: [swimmer('s-ada', 'Ada'), swimmer('s-adam', 'Adam')],
  };

  beforeEach(async () => {
    const first = must(await under().ask('squad/write', { squad, baseRevision: null }));
    // a generation of the squad that knows her, too
    const swimmers = squad.swimmers.map((each) => ({ ...each, birthYear: 2010 }));
    must(await under().ask('squad/write', { squad: { ...squad, swimmers }, baseRevision: first.revision }));
    await swimOf('ada-1', 'Ada', 's-ada');
    await swimOf('ada-2', 'ada', null);
    const adam = await swimOf('adam-1', 'Adam', 's-adam', 'swims behind Ada, Adam does');
    must(await under().ask('swim/write', { swim: adam.swim, baseRevision: adam.revision }));
    await writeFile(inLibrary('swims', 'adam-1', 'clip.mp4'), 'film of Adam alone');
    const binned = await swimOf('ada-3', 'Ada', 's-ada');
    // changed in two places
    must(
      await under().ask('swim/write', {
        swim: { ...binned.swim, changedAt: '2026-01-01T00:00:00Z' },
        baseRevision: binned.revision,
      }),
    );
    await under().ask('swim/write', { swim: binned.swim, baseRevision: '0'.repeat(64) });
    must(await under().ask('swim/remove', { id: 'ada-3' }));
    const practice = aPractice({ id: 'p', swimmerIds: ['s-ada', 's-adam'], title: 'Ada and Adam' });
    const written = must(await under().ask('practice/write', { practice, baseRevision: null }));
    must(
      await under().ask('practice/write', {
        practice: { ...practice, note: 'again' },
        baseRevision: written.revision,
      }),
    );
    const trial: Trial = {
      format: 'submark-trial',
      version: trialFileVersion,
      createdAt: '2026-05-01T10:00:00.000Z',
      changedAt: '2026-05-01T10:00:00.000Z',
      title: '',
      readings: [],
      note: '',
      invented: true,
      id: 't',
      factor: { of: 'tag', tag: 'Ada' },
      rows: [{ swimId: 'adam-1', order: 0, tags: { ...noTags, free: ['Ada', 'like Ada swims'] } }],
      plan: { seed: 1, conditions: ['Ada', 'not Ada'], repeatsEach: 2 },
    };
    must(await under().ask('trial/write', { trial, baseRevision: null }));
    const { book } = must(await under().ask('drills/read', {}));
    const [usual] = drillLibrary;
    if (!usual) throw new Error('a drill was expected');
    const drills = [{ ...usual, id: 'own', name: 'Ada', watch: ['hips as high as Ada’s'] }];
    must(await under().ask('drills/write', { book: { ...book, drills }, baseRevision: null }));
    const outside = path.join(beside(), 'ada on a stick.mp4');
    await writeFile(outside, 'film outside');
    const clip = must(await under().ask('clip/refer', { path: outside }));
    const card = { ...aSwim().card, swimmerId: 's-ada', swimmerName: 'Ada' };
    must(await under().ask('swim/create', { swim: aSwim({ id: 'ada-4', card }), clipId: clip.clipId }));
    await writeFile(inLibrary('exports', 'Ada - butterfly - 14 May.png'), 'picture');
    await writeFile(inLibrary('exports', 'trial.csv'), 'swim,speed\nada-1,1.2\n');
    await writeFile(inLibrary('exports', 'Adam.png'), 'picture');
    await writeFile(inLibrary('swims', 'ada-1', 'thumb.jpg'), 'thumbnail');
    must(await under().ask('library/open', {}));
    await under().host.close();
  });
  const plan = async () =>
    erasePlanSchema.parse(await resultOf(must(await under().ask('erase/plan', { swimmerId: 's-ada' }))));

  it('lists every file first and touches none of them', async () => {
    const before = filesUnder(under().library);
    const { files, swims, outside, exportsUntold } = await plan();
    expect(filesUnder(under().library)).toEqual(before);
    expect(swims).toBe(4);
    expect(outside).toEqual([path.join(beside(), 'ada on a stick.mp4')]);
    expect(exportsUntold).toEqual(['exports/Adam.png']);
    const named = Object.fromEntries(files.map((each) => [each.path, `${each.does} ${each.kind}`]));
    expect(named).toMatchObject({
      'swims/ada-1/swim.json': 'remove swim',
      'swims/ada-1/clip.mp4': 'remove swim',
      'swims/ada-2/clip.mp4': 'remove swim',
      'bin/ada-3/clip.mp4': 'remove bin',
      'exports/Ada - butterfly - 14 May.png': 'remove export',
      'exports/trial.csv': 'remove export',
      'squad.json': 'change squad',
      'practices/p.json': 'change practice',
      'trials/t.json': 'change trial',
      'drills.json': 'change mention',
      'swims/adam-1/swim.json': 'change mention',
      'practices/.generations/p.json.00000001': 'remove generation',
    });
    expect(named['swims/adam-1/clip.mp4']).toBeUndefined();
    expect(named['exports/Adam.png']).toBeUndefined();
  });

  it('removes what was listed and nothing else, proves it by a look through all, and leaves Adam whole', async () => {
    const { token, files } = await plan();
    const gone = new Set(files.filter(({ does }) => does === 'remove').map((each) => each.path));
    const stays = filesUnder(under().library).filter((name) => !gone.has(name.split(path.sep).join('/')));
    const done = erasedSchema.parse(
      await resultOf(must(await under().ask('erase/do', { swimmerId: 's-ada', token }))),
    );
    expect(done.left).toEqual([]);
    expect(done.filesLooked).toBeGreaterThan(5);
    expect([...done.swimIds].sort()).toEqual(['ada-1', 'ada-2', 'ada-3', 'ada-4']);
    expect(done.outside).toEqual([path.join(beside(), 'ada on a stick.mp4')]);
    expect(existsSync(path.join(beside(), 'ada on a stick.mp4'))).toBe(true);
    expect(filesUnder(under().library)).toEqual(stays);
    // an independent look: no text of the library has her name as a word, her id, or one of her swims
    for (const name of filesUnder(under().library))
      expect(await readFile(inLibrary(name), 'utf8'), name).not.toMatch(/\bada\b|s-ada"|ada-[1-4]\b/i);
    const opened = must(await under().ask('library/open', {}));
    expect(opened.swims.map(({ card }) => card.note)).toEqual(['swims behind [erased], Adam does']);
    expect(opened.squad.swimmers.map(({ name }) => name)).toEqual(['Adam']);
    expect(must(await under().ask('practice/read', { id: 'p' })).practice).toMatchObject({
      title: '[erased] and Adam',
      swimmerIds: ['s-adam'],
    });
    const { trial } = must(await under().ask('trial/read', { id: 't' }));
    expect(trial.factor).toEqual({ of: 'tag', tag: '[erased]' });
    expect(trial.rows[0]?.tags.free).toEqual(['[erased]', 'like [erased] swims']);
    expect(trial.plan?.conditions).toEqual(['[erased]', 'not [erased]']);
    const { book } = must(await under().ask('drills/read', {}));
    expect(book.drills).toMatchObject([{ name: '[erased]', watch: ['hips as high as [erased]’s'] }]);
    expect(book.patterns.length).toBeGreaterThan(0);
    expect(readdirSync(inLibrary('swims'))).toEqual(['adam-1']);
    expect(readdirSync(inLibrary('bin'))).toEqual([]);
  });

  it('refuses when the library is no longer as it was shown', async () => {
    const { token } = await plan();
    await swimOf('ada-5', 'Ada', 's-ada');
    const look = await ended(must(await under().ask('erase/do', { swimmerId: 's-ada', token })));
    expect(look).toMatchObject({ state: 'failed', error: { code: 'conflict' } });
    expect(existsSync(inLibrary('swims', 'ada-1', 'clip.mp4'))).toBe(true);
  });

  it('tells what the look afterwards still finds: her film under another name, her name in a file of no known kind', async () => {
    const clip = await readFile(inLibrary('swims', 'ada-1', 'clip.mp4'));
    const adam = must(await under().host.clips.arrive('copy.mp4', streamOf(clip.toString())));
    must(
      await under().ask('swim/create', {
        swim: aSwim({ id: 'adam-2', card: { ...aSwim().card, swimmerId: 's-adam', swimmerName: 'Adam' } }),
        clipId: adam.clipId,
      }),
    );
    await rm(inLibrary('swims', 'adam-1'), { recursive: true });
    await writeFile(inLibrary('notes.txt'), 'Ada was here');
    const { token } = await plan();
    const done = erasedSchema.parse(
      await resultOf(must(await under().ask('erase/do', { swimmerId: 's-ada', token }))),
    );
    expect(done.left).toEqual([
      { path: 'notes.txt', what: 'name' },
      { path: 'swims/adam-2/copy.mp4', what: 'clip' },
    ]);
  });
});
