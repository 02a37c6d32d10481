import type { z } from 'zod';
import { failure, type Result } from '#core/host-contract/host-error';
import { type OperationName, type OperationOutput, operations } from '#core/host-contract/operations';
import type { HostClient } from './host-client';
import { sentInput } from './sent-input';
import { createStreamClient, readAnswer } from './stream-client';

/** What the preload script puts on the window. */
export interface HostBridge {
  run(name: string, input: unknown): Promise<unknown>;
  pathOf(file: File): string;
}

/** The contract over Electron's IPC; byte streams ride on the app's own protocol. */
export function createIpcClient(bridge: HostBridge): HostClient {
  const call: HostClient['call'] = async <Name extends OperationName>(
    name: Name,
    input: unknown,
    signal?: AbortSignal,
  ) => {
    const answer = await bridge.run(name, sentInput(name, input));
    // IPC can't be taken back: the answer of a cancelled call is dropped
    if (signal?.aborted) return failure('cancelled');
    const schema = operations[name].output as unknown as z.ZodType<OperationOutput<Name>>;
    return readAnswer(schema, answer) as Result<OperationOutput<Name>>;
  };
  const overHttp = globalThis.location?.protocol.startsWith('http') ?? false;
  return {
    ...createStreamClient(call, overHttp ? 'blob' : 'stream'),
    transport: 'ipc',
    call,
    pathOf: (file) => bridge.pathOf(file) || null,
  };
}
