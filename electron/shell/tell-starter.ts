/**
 * Tells the start command, where one has started this program, that Electron itself works here: what ends before that did
 * not start, and the start command opens a browser instead.
 */
export function tellStarter(): void {
  process.send?.('ready');
  if (process.connected) process.disconnect();
}
