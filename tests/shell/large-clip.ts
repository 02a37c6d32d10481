import { closeSync, copyFileSync, openSync, statSync, truncateSync, writeSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const film = fileURLToPath(
  new URL('../../sample-clips/library/swims/sample-fins-slow-motion/fins-slow-motion.mp4', import.meta.url),
);

/** A real clip with some 2³⁰ bytes of nothing behind it, in a box that every reader of MP4 passes over. */
export function largeClip(file: string, gigabytes: number): void {
  copyFileSync(film, file);
  const behind = gigabytes * 2 ** 30;
  const header = Buffer.alloc(16);
  header.writeUInt32BE(1, 0);
  header.write('free', 4);
  header.writeBigUInt64BE(BigInt(behind), 8);
  const size = statSync(file).size;
  const open = openSync(file, 'r+');
  writeSync(open, header, 0, 16, size);
  closeSync(open);
  truncateSync(file, size + behind);
}
