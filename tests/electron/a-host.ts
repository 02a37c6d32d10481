import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Result } from '#core/host-contract/host-error';
import type { OperationInput, OperationName, OperationOutput } from '#core/host-contract/operations';
import type { Swim } from '#core/swim-file/swim-schema';
import { createHost, type Host, type HostOptions } from '#electron/host/create-host';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';

/** A host on an empty library of its own, and typed short ways to ask it. */
export interface HostUnderTest {
  readonly host: Host;
  readonly library: string;
  ask<Name extends OperationName>(
    name: Name,
    input: OperationInput<Name>,
  ): Promise<Result<OperationOutput<Name>>>;
  /** A swim made from an uploaded clip, through the contract; gives its revision and swim as on disk. */
  addSwim(change?: Partial<Swim>): Promise<{ swim: Swim; revision: string }>;
  close(): Promise<void>;
}

export async function aHost(options: Partial<HostOptions> = {}): Promise<HostUnderTest> {
  const parent = await mkdtemp(path.join(tmpdir(), 'submark-test-'));
  const library = path.join(parent, 'library');
  const made = await createHost({ libraryPath: library, samplesPath: null, ...options });
  if (!made.ok) throw new Error(made.error.code);
  const host = made.value;
  const ask: HostUnderTest['ask'] = async (name, input) => (await host.run(name, input)) as never;
  return {
    host,
    library,
    ask,
    async addSwim(change) {
      const clip = must(await host.clips.arrive('clip.mp4', streamOf('hello video')));
      return must(await ask('swim/create', { swim: aSwim(change), clipId: clip.clipId }));
    },
    async close() {
      // first what it still writes, so that nothing is laid into a folder that is being removed
      await host.close();
      await rm(parent, { recursive: true, force: true });
    },
  };
}

export function streamOf(text: string): ReadableStream<Uint8Array> {
  return new Blob([text]).stream() as ReadableStream<Uint8Array>;
}

export function must<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.error.code} ${JSON.stringify(result.error.detail)}`);
  return result.value;
}
