/** Whether something was thrown because its AbortSignal said stop. */
export function isAbort(error: unknown): boolean {
  return error instanceof Error && (error.name === 'AbortError' || error.name === 'CancelError');
}
