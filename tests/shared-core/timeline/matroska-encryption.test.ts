import { expect, it } from 'vitest';
import { isMatroskaEncrypted } from '#core/timeline/matroska-encryption';

const element = (id: string, ...content: Buffer[]): Buffer => {
  const inside = Buffer.concat(content);
  const size = Buffer.alloc(4);
  size.writeUInt32BE(0x1000_0000 + inside.length);
  return Buffer.concat([Buffer.from(id, 'hex'), size, inside]);
};
const film = (...encodings: Buffer[]): Buffer =>
  Buffer.concat([
    element('1a45dfa3', element('4282', Buffer.from('matroska'))),
    element('18538067', element('ec', Buffer.alloc(60)), element('1654ae6b', element('ae', ...encodings))),
  ]);

it('tells an encrypted track from one that is only compressed, and from a plain one', () => {
  expect(isMatroskaEncrypted(film(element('6d80', element('6240', element('5035')))))).toBe(true);
  expect(isMatroskaEncrypted(film(element('6d80', element('6240', element('5034')))))).toBe(false);
  expect(isMatroskaEncrypted(film())).toBe(false);
});

it('goes into a segment whose length is not known, and ends on bytes that mean nothing', () => {
  const live = film(element('6d80', element('6240', element('5035'))));
  const at = live.indexOf(Buffer.from('18538067', 'hex')) + 4;
  live.writeUInt32BE(0x1fff_ffff, at);
  expect(isMatroskaEncrypted(live)).toBe(true);
  expect(isMatroskaEncrypted(new Uint8Array(60_000))).toBe(false);
  expect(isMatroskaEncrypted(new Uint8Array(60_000).fill(0x80))).toBe(false);
});
