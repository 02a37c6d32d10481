/**
 * Tells the start command, where it started this program, that Electron itself works here: what ends before that did not
 * start, and the start command opens a browser instead.
 */
export function tellStarter(): void {
  if (process.env['SUBMARK_STARTER'] !== 'waits') return;
  process.send?.('ready');
  process.disconnect?.();
}
