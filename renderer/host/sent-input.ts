import { type OperationName, operations } from '#core/host-contract/operations';

/**
 * A whole swim with every frame marked takes longer to check than a screen picture lasts, and it is written after each change:
 * the host, which checks everything that reaches it, checks that alone.
 */
const checkedByHost: ReadonlySet<OperationName> = new Set<OperationName>(['swim/write']);

/** What is sent to the host: checked here as well, so that a bug shows where it is made. */
export function sentInput(name: OperationName, input: unknown): unknown {
  return checkedByHost.has(name) ? input : operations[name].input.parse(input);
}
