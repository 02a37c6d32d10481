import type { z } from 'zod';
import { failure, type Result } from '#core/host-contract/host-error';
import { type OperationName, type OperationOutput, operations } from '#core/host-contract/operations';
import type { HostClient } from './host-client';
import { sentInput } from './sent-input';
import { createStreamClient, readAnswer } from './stream-client';

/** The contract over HTTP on the page's own origin; the browser adds the cookie that lets us in. */
export function createLoopbackClient(): HostClient {
  const call: HostClient['call'] = async <Name extends OperationName>(
    name: Name,
    input: unknown,
    signal?: AbortSignal,
  ) => {
    let answer: unknown;
    try {
      const response = await fetch(`/op/${name}`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify(sentInput(name, input)),
        ...(signal ? { signal } : {}),
      });
      if (response.status === 403) return failure('not-allowed', { window: 1 });
      if (!response.ok) return failure('host-unreachable', { status: response.status });
      // the answer can be given up, or cut off, while it still arrives
      answer = await response.json();
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return failure('cancelled');
      if (error instanceof TypeError) return failure('host-unreachable');
      throw error;
    }
    const schema = operations[name].output as unknown as z.ZodType<OperationOutput<Name>>;
    return readAnswer(schema, answer) as Result<OperationOutput<Name>>;
  };
  return { ...createStreamClient(call, 'blob'), transport: 'loopback', call, pathOf: () => null };
}
