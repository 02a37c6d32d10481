import { describe, expect, it } from 'vitest';
import {
  isMatroskaCut,
  isPhoto,
  isUnreadableContainer,
  listsOnlyReadable,
  nameContainer,
} from '#core/timeline/container-name';

const bytes = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

describe('naming a container by its first bytes', () => {
  it('knows the boxes an MP4 or MOV begins with', () => {
    expect(nameContainer(bytes('\0\0\0\x18ftypisom'))).toBe('MP4');
    expect(nameContainer(bytes('\0\0\0\x08wide\0\0\0\0mdat'))).toBe('MP4');
  });

  it('knows AVI, and that it needs a working copy', () => {
    expect(nameContainer(bytes('RIFF\0\0\0\0AVI LIST'))).toBe('AVI');
    expect(isUnreadableContainer('AVI')).toBe(true);
    expect(isUnreadableContainer('MP4')).toBe(false);
  });

  it('knows a transport stream by its sync bytes, with and without time codes', () => {
    const plain = new Uint8Array(600);
    for (const at of [0, 188, 376]) plain[at] = 0x47;
    expect(nameContainer(plain)).toBe('MPEG-TS');
    const camcorder = new Uint8Array(600);
    for (const at of [4, 196, 388]) camcorder[at] = 0x47;
    expect(nameContainer(camcorder)).toBe('MPEG-TS');
  });

  it('knows a transport stream that begins in the middle of a packet, at any of its packet lengths', () => {
    for (const length of [188, 192, 204]) {
      const cut = new Uint8Array(4096);
      for (let at = 77; at < cut.length; at += length) cut[at] = 0x47;
      expect(nameContainer(cut)).toBe('MPEG-TS');
    }
    // letters of a text stand anywhere, but not again and again at that distance
    expect(nameContainer(bytes('Going up, Going down. '.repeat(150)))).toBeNull();
    expect(listsOnlyReadable('MPEG-TS')).toBe(true);
    expect(listsOnlyReadable('MP4')).toBe(false);
  });

  it('calls text, pictures and nothing no container', () => {
    expect(nameContainer(bytes('hello, this is a shopping list'))).toBeNull();
    expect(nameContainer(bytes('RIFF\0\0\0\0WAVEfmt '))).toBeNull();
    expect(nameContainer(bytes('\x89PNG\r\n\x1a\n'))).toBeNull();
    expect(nameContainer(new Uint8Array())).toBeNull();
  });
});

describe('files that are not what they look like', () => {
  it('knows photos by their brand or signature', () => {
    for (const photo of [
      '\0\0\0\x18ftypheic',
      '\0\0\0\x18ftypavif',
      '\x89PNG\r\n',
      'GIF89a',
      'RIFF\0\0\0\0WEBPVP8 ',
      '\xff\xd8\xff\xe1',
    ])
      expect(isPhoto(bytes(photo)), photo).toBe(true);
    for (const film of ['\0\0\0\x18ftypisom', 'RIFF\0\0\0\0AVI LIST', '', '\x1a\x45\xdf\xa3'])
      expect(isPhoto(bytes(film)), film).toBe(false);
  });

  it('knows a Matroska file that ends before its segment does', () => {
    // an empty EBML header, then a segment of 1000 bytes: 13 bytes of heads before them
    const head = Uint8Array.from([0x1a, 0x45, 0xdf, 0xa3, 0x80, 0x18, 0x53, 0x80, 0x67, 0x10, 0, 0x03, 0xe8]);
    expect(isMatroskaCut(head, 1013)).toBe(false);
    expect(isMatroskaCut(head, 1012)).toBe(true);
    // a live recording does not say how long it is
    const live = Uint8Array.from([...head.subarray(0, 9), 0x01, 255, 255, 255, 255, 255, 255, 255]);
    expect(isMatroskaCut(live, 40)).toBe(false);
    expect(isMatroskaCut(new Uint8Array(), 0)).toBe(false);
    expect(isMatroskaCut(bytes('\0\0\0\x18ftypisom'), 5)).toBe(false);
  });
});
