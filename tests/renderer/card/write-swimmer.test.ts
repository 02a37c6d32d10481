import { describe, expect, it } from 'vitest';
import { enrolSwimmer, writeSwimmer } from '../../../renderer/card/write-swimmer';
import type { HostClient } from '../../../renderer/host/host-client';
import { aHost, must } from '#tests/electron/a-host';

/** The contract straight on a real host, on a library of its own. */
async function onHost(
  work: (host: HostClient, ask: Awaited<ReturnType<typeof aHost>>['ask']) => Promise<void>,
) {
  const under = await aHost();
  try {
    const host = { call: under.ask } as unknown as HostClient;
    await work(host, under.ask);
  } finally {
    await under.close();
  }
}
let made = 0;
const makeId = (): string => `made-${++made}`;

describe('the squad', () => {
  it('gets a new swimmer once, whatever the case of the name', () =>
    onHost(async (host, ask) => {
      const first = must(await enrolSwimmer(host, ' Rowan ', makeId));
      const again = must(await enrolSwimmer(host, 'rowan', makeId));
      expect(first?.name).toBe('Rowan');
      expect(again?.id).toBe(first?.id);
      expect(must(await ask('library/open', {})).squad.swimmers).toHaveLength(1);
    }));

  it('gets no one for an empty name', () =>
    onHost(async (host, ask) => {
      expect(must(await enrolSwimmer(host, '  ', makeId))).toBeNull();
      expect(must(await ask('library/open', {})).squadRevision).toBeNull();
    }));

  it('keeps consent, and what another window wrote meanwhile', () =>
    onHost(async (host, ask) => {
      const rowan = must(await enrolSwimmer(host, 'Rowan', makeId));
      const ada = must(await enrolSwimmer(host, 'Ada', makeId));
      must(await writeSwimmer(host, ada?.id ?? '', { birthYear: 2012 }));
      const consent = { givenOn: '2026-05-01', givenBy: 'guardian', note: '' };
      must(await writeSwimmer(host, rowan?.id ?? '', { consent, streamlineMetres: 2.1 }));
      const { swimmers } = must(await ask('library/open', {})).squad;
      expect(swimmers.map((each) => [each.name, each.birthYear, each.consent])).toEqual([
        ['Rowan', null, consent],
        ['Ada', 2012, null],
      ]);
    }));

  it('tries once more when the squad changed between reading and writing', () =>
    onHost(async (host, ask) => {
      let meddled = false;
      const call = async (name: 'library/open' | 'squad/write', input: never): Promise<unknown> => {
        if (name === 'squad/write' && !meddled) {
          meddled = true;
          must(await enrolSwimmer(host, 'Ada', makeId));
        }
        return ask(name, input);
      };
      must(await enrolSwimmer({ call } as unknown as HostClient, 'Rowan', makeId));
      const names = must(await ask('library/open', {})).squad.swimmers.map((each) => each.name);
      expect(names).toEqual(['Ada', 'Rowan']);
    }));

  it('refuses a name that is taken and a swimmer who is gone', () =>
    onHost(async (host) => {
      const rowan = must(await enrolSwimmer(host, 'Rowan', makeId));
      must(await enrolSwimmer(host, 'Ada', makeId));
      const taken = await writeSwimmer(host, rowan?.id ?? '', { name: 'ADA' });
      const gone = await writeSwimmer(host, 'no-one', { birthYear: 2010 });
      expect([taken, gone].map((each) => (each.ok ? 'ok' : each.error.code))).toEqual([
        'already-there',
        'not-found',
      ]);
    }));
});
