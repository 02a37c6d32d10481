import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { z } from 'zod';
import { hostErrorSchema } from '#core/host-contract/host-error';
import { type OperationName, operations } from '#core/host-contract/operations';
import { createHost, type Host } from '#electron/host/create-host';
import { createRequestHandler } from '#electron/host/request-handler';
import { aSwim } from '#tests/shared-core/swim-file/a-swim';
import { mutateValue, pickOf, type Random } from './mutate';
import type { FuzzTarget } from './run-fuzz';
import { valueOfSchema } from './value-of-schema';

const names = Object.keys(operations) as OperationName[];
const answerSchema = z.union([
  z.strictObject({ ok: z.literal(true), value: z.unknown() }),
  z.strictObject({ ok: z.literal(false), error: hostErrorSchema }),
]);

function inputFor(random: Random, name: OperationName): unknown {
  const schema = z.toJSONSchema(operations[name].input, { io: 'input', unrepresentable: 'any' });
  let input = valueOfSchema(random, schema as Parameters<typeof valueOfSchema>[1]);
  if (typeof input === 'object' && input !== null && 'swim' in input)
    input = { ...input, swim: aSwim({ id: random() < 0.5 ? 'swim-1' : 'swim-2' }) };
  const changes = Math.floor(random() * 3);
  for (let i = 0; i < changes; i++) input = mutateValue(random, input);
  return input;
}

export interface HostUnderFire {
  readonly targets: readonly FuzzTarget[];
  close(): Promise<void>;
}

/** A host on a library of its own, with files beside the library that nothing may touch or tell of. */
export async function hostUnderFire(): Promise<HostUnderFire> {
  const parent = mkdtempSync(path.join(tmpdir(), 'submark-fuzz-'));
  const library = path.join(parent, 'library');
  const secret = 'this line may never leave its file';
  const outside = path.join(parent, 'outside.txt');
  writeFileSync(outside, secret);
  const app = path.join(parent, 'app');
  mkdirSync(app);
  writeFileSync(path.join(app, 'index.html'), '<!doctype html>');
  const made = await createHost({ libraryPath: library, samplesPath: null });
  if (!made.ok) throw new Error(made.error.code);
  const host: Host = made.value;
  const handler = createRequestHandler(host, app);
  const before = readdirSync(parent).sort().join();

  const untouched = (): void => {
    if (readFileSync(outside, 'utf8') !== secret) throw new Error('a file outside the library was changed');
    if (readdirSync(parent).sort().join() !== before)
      throw new Error(`the folder around the library changed: ${readdirSync(parent).join()}`);
  };

  const operation: FuzzTarget = {
    name: 'operations',
    async run(random, note) {
      const name =
        random() < 0.03
          ? String(pickOf(random, ['__proto__', 'toString', '', 'x/y']))
          : pickOf(random, names);
      const input =
        random() < 0.05
          ? undefined
          : inputFor(random, name && Object.hasOwn(operations, name) ? (name as OperationName) : 'swim/read');
      note({ name, input });
      const answer = answerSchema.parse(await host.run(name ?? '', input));
      if (answer.ok && typeof answer.value === 'object' && answer.value !== null && 'jobId' in answer.value)
        await host.run('job/cancel', { jobId: answer.value.jobId });
      if (JSON.stringify(answer).includes(secret)) throw new Error('what lies outside was told');
      untouched();
    },
  };

  const places = [
    '/op/',
    '/stream/clip/',
    '/stream/arrived/',
    '/stream/thumbnail/',
    '/stream/',
    '/assets/',
    '/',
    '/open/',
  ];
  const tails = [
    'swim-1',
    '..',
    '%2e%2e',
    '..%2f..%2foutside.txt',
    '%00',
    'a%0d%0ab',
    '....//',
    'index.html',
    'CON',
    '%ff',
    'x'.repeat(5000),
  ];
  const endpoint: FuzzTarget = {
    name: 'endpoints',
    async run(random, note) {
      const method = pickOf(random, ['GET', 'POST', 'PUT', 'DELETE', 'HEAD', 'OPTIONS', 'PATCH']) ?? 'GET';
      const where = `${pickOf(random, places)}${pickOf(random, [...names, ...tails])}${random() < 0.3 ? `/${pickOf(random, tails)}` : ''}`;
      const query = random() < 0.4 ? `?name=${pickOf(random, tails)}` : '';
      const body =
        method === 'GET' || method === 'HEAD'
          ? undefined
          : (pickOf(random, [
              '',
              '{',
              '[]',
              '{"id":"swim-1"}',
              '"'.repeat(9000),
              '{"__proto__":{}}',
              '\u0000',
            ]) ?? '');
      const ranges = [
        'bytes=0-1',
        'bytes=-1',
        'bytes=9-1',
        'bytes=0-,1-',
        'items=1',
        'bytes=99999999999999999999-',
      ];
      note({ method, where, query, body });
      const request = new Request(`http://127.0.0.1:1${where}${query}`, {
        method,
        ...(body === undefined ? {} : { body }),
        headers: random() < 0.4 ? { Range: pickOf(random, ranges) ?? '' } : {},
      });
      const response = await handler(request);
      if (response.status >= 500) throw new Error(`answered ${response.status}`);
      if ((await response.text()).includes(secret)) throw new Error('what lies outside was told');
      untouched();
    },
  };
  return {
    targets: [operation, endpoint],
    close: async () => {
      await host.close();
      rmSync(parent, { recursive: true, force: true });
    },
  };
}
