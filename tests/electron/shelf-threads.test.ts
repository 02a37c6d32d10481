import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { OperationOutput } from '#core/host-contract/operations';
import { createHost } from '#electron/host/create-host';
import { aMark } from '#tests/renderer/a-swim';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { aHost, type HostUnderTest, must } from './a-host';

type Opened = OperationOutput<'library/open'>;

/** Enough that threads are worth it, several messages of each kind. */
const count = 64;
let under: HostUnderTest;
let built: string;
let entry: URL;

beforeAll(async () => {
  // not in the system's folder: the thread finds packages as the built program does
  const parent = path.join(process.cwd(), 'node_modules', '.cache');
  await mkdir(parent, { recursive: true });
  built = await mkdtemp(path.join(parent, 'thread-'));
  const outfile = path.join(built, 'reading-thread.js');
  await build({
    entryPoints: ['electron/host/shelf/reading-thread.ts'],
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    outfile,
    logLevel: 'error',
  });
  entry = pathToFileURL(outfile);
  under = await aHost();
  for (let at = 0; at < count; at++)
    await under.addSwim({
      id: `swim-${at}`,
      card: { ...aSwim().card, swimmerName: `Swimmer ${at % 7}`, drill: `drill ${at}` },
      events: [0, 1, 2, 3].flatMap((i) => [
        aMark(`t${i}`, 'kick-top', 5 + 28 * i),
        aMark(`b${i}`, 'kick-bottom', 17 + 28 * i),
      ]),
    });
  const damaged = path.join(under.library, 'swims', 'swim-3', 'swim.json');
  await writeFile(damaged, (await readFile(damaged, 'utf8')).slice(0, 300));
});
afterAll(async () => {
  await under.close();
  await rm(built, { recursive: true, force: true });
});

/** The library through a host that knows no index, read in the way asked for. */
async function freshHost(readingThread: URL | null) {
  await rm(path.join(under.library, '.cache'), { recursive: true, force: true });
  return must(
    await createHost({
      libraryPath: under.library,
      samplesPath: null,
      ...(readingThread ? { readingThread } : {}),
    }),
  );
}
const open = async (host: Awaited<ReturnType<typeof freshHost>>, input: object = {}): Promise<Opened> =>
  must(await host.run('library/open', input)) as Opened;
const byId = ({ swims }: Opened) => [...swims].sort((a, b) => a.id.localeCompare(b.id));

const drillOf = (opened: Opened) => opened.swims.find(({ id }) => id === 'swim-5')?.card.drill;

describe('many swims that no index knows', () => {
  it('are told in threads just as the host itself would tell them, damaged ones too', async () => {
    const alone = await freshHost(null);
    const plain = await open(alone);
    await alone.close();
    const threaded = await freshHost(entry);
    const told = await open(threaded);
    await threaded.close();
    expect(byId(told)).toEqual(byId(plain));
    expect(told.swims).toHaveLength(count - 1);
    expect(told.swims.every(({ headline }) => headline.length > 0)).toBe(true);
    expect([told.problems, plain.problems].map(([one]) => [one?.folder, one?.code])).toEqual([
      ['swim-3', 'swim-damaged'],
      ['swim-3', 'swim-damaged'],
    ]);
  });

  it('are on the shelf with card and film before their readings, and nothing is told twice', async () => {
    const host = await freshHost(entry);
    const seen: Opened[] = [];
    do {
      seen.push(await open(host, { partly: true, remembered: true }));
    } while ((seen.at(-1)?.pending ?? 0) + (seen.at(-1)?.readingsPending ?? 0) > 0);
    const whole = byId(await open(host));
    for (const { swims, pending, readingsPending, problems } of seen) {
      expect(swims.length + pending + problems.length).toBeLessThanOrEqual(count);
      expect(swims.filter(({ headline }) => headline.length === 0)).toHaveLength(readingsPending);
      for (const each of swims)
        expect({ ...each, headline: [] }).toEqual({
          ...whole.find(({ id }) => id === each.id),
          headline: [],
        });
    }
    await host.close();
  });

  it('are read all the same when no thread can be had, and a host that is closed at once stops reading', async () => {
    const warned = vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    const host = await freshHost(pathToFileURL(path.join(built, 'not-there.js')));
    expect((await open(host)).swims).toHaveLength(count - 1);
    expect(warned).toHaveBeenCalledOnce();
    warned.mockRestore();
    await host.close();
    const hasty = await freshHost(entry);
    const partly = await open(hasty, { partly: true, atMost: 5 });
    expect(partly.pending).toBeGreaterThanOrEqual(count - 5);
    void hasty.run('library/open', { partly: true });
    await hasty.close();
  });

  it('are remembered without a look at the disk when asked for so, and looked at when not', async () => {
    const host = await freshHost(null);
    await open(host);
    const file = path.join(under.library, 'swims', 'swim-5', 'swim.json');
    const text = await readFile(file, 'utf8');
    await writeFile(file, text.replace('drill 5', 'drill V and longer'));
    const remembered = await open(host, { partly: true, remembered: true });
    const checked = await open(host, { partly: true });
    expect([drillOf(remembered), remembered.checked]).toEqual(['drill 5', false]);
    expect([drillOf(checked), checked.checked]).toEqual(['drill V and longer', true]);
    await writeFile(file, text);
    await host.close();
  });
});
