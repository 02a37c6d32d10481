import { expect, it } from 'vitest';
import { isSlowedInPart } from '#core/timeline/phone-trailer';

/** An invented end of a file: film, what was appended, and the list of it. */
function ending(kinds: readonly number[]): Uint8Array {
  const list = Buffer.alloc(12 + 12 * kinds.length);
  list.write('SEFH');
  list.writeUInt32LE(106, 4);
  list.writeUInt32LE(kinds.length, 8);
  for (const [n, kind] of kinds.entries()) list.writeUInt16LE(kind, 12 + 12 * n + 2);
  const length = Buffer.alloc(4);
  length.writeUInt32LE(list.length);
  return Buffer.concat([Buffer.alloc(300, 1), list, length, Buffer.from('SEFT')]);
}

it('tells film that a phone slowed only in part', () => {
  expect(isSlowedInPart(ending([0x0a30, 0x0b00]))).toBe(true);
});

it('tells nothing of film with another list, none, or a list that points nowhere', () => {
  expect(isSlowedInPart(ending([0x0a30]))).toBe(false);
  expect(isSlowedInPart(new Uint8Array(200))).toBe(false);
  const broken = Buffer.from(ending([0x0b00]));
  broken.writeUInt32LE(0xffff_ff00, broken.length - 8);
  expect(isSlowedInPart(broken)).toBe(false);
  const endless = Buffer.from(ending([0x0a30]));
  endless.writeUInt32LE(0xffff_ffff, 300 + 8);
  expect(isSlowedInPart(endless)).toBe(false);
});
