import { readdirSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { aHost, type HostUnderTest, must } from './a-host';

/** Every file in a folder whose loss would be one: caches are made again. */
export const filesUnder = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile())
    .map((each) => path.relative(folder, path.join(each.parentPath, each.name)))
    .filter((name) => !name.startsWith('.cache'))
    .sort();

/** A host on a fresh library for every test of a file, and what upkeep is asked and answered with. */
export function libraryUnderUpkeep() {
  let under: HostUnderTest;
  beforeEach(async () => {
    under = await aHost();
  });
  afterEach(() => under.close());

  async function ended(started: { jobId: string }) {
    for (;;) {
      const look = must(await under.ask('job/look', started));
      if (look.state !== 'running') return look;
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  }
  return {
    /** The host of the test that runs. */
    under: () => under,
    /** The folder that the library lies in. */
    beside: () => path.dirname(under.library),
    inLibrary: (...parts: string[]): string => path.join(under.library, ...parts),
    ended,
    async resultOf(started: { jobId: string }): Promise<unknown> {
      const look = await ended(started);
      if (look.state !== 'done') throw new Error(JSON.stringify(look));
      return look.result;
    },
    swimOf: (id: string, name: string, swimmerId: string | null, words = '') =>
      under.addSwim({ id, card: { ...aSwim().card, swimmerId, swimmerName: name, note: words } }),
  };
}
