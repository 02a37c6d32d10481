import { describe, expect, it } from 'vitest';
import { slowdownFromTags } from '#core/timeline/capture-rate';

const float = (value: number): Uint8Array => {
  const bytes = new Uint8Array(4);
  new DataView(bytes.buffer).setFloat32(0, value);
  return bytes;
};

describe('slowdown from a capture-rate tag', () => {
  it('is the capture rate over the stored rate: 240 a second stored at 30 is eight times slower than life', () => {
    expect(slowdownFromTags({ 'com.android.capture.fps': float(240) }, 30)).toBe(8);
    expect(slowdownFromTags({ 'com.android.capture.fps': '120' }, 30)).toBe(4);
    expect(slowdownFromTags({ 'com.android.capture.fps': 240 }, 60)).toBe(4);
  });

  it('reads the bytes of 240 as a phone writes them', () => {
    // IEEE 754 single: 240 = 0x43700000
    expect(slowdownFromTags({ 'com.android.capture.fps': Uint8Array.of(0x43, 0x70, 0, 0) }, 30)).toBe(8);
  });

  it('tells nothing when stored at the rate it was filmed', () => {
    expect(slowdownFromTags({ 'com.android.capture.fps': float(30) }, 29.97)).toBeNull();
    expect(slowdownFromTags({ 'com.android.capture.fps': float(240) }, 240)).toBeNull();
  });

  it('is none on a phone’s quick film, which keeps the times of filming whether it is to be played slowed or not', () => {
    const key = 'com.apple.quicktime.full-frame-rate-playback-intent';
    for (const intent of [0, 1, Uint8Array.of(0), '1']) {
      expect(slowdownFromTags({ [key]: intent }, 240)).toBe(1);
      expect(slowdownFromTags({ [key]: intent }, 119.88)).toBe(1);
      // slowed when it was sent or edited, or never quick at all: the coach is asked
      expect(slowdownFromTags({ [key]: intent }, 29.97)).toBeNull();
      expect(slowdownFromTags({ [key]: intent }, 60)).toBeNull();
    }
    expect(slowdownFromTags({}, 240)).toBeNull();
  });

  it('believes no damaged tag', () => {
    for (const tag of [float(Number.NaN), float(-240), float(1e9), 'fast', new Uint8Array(3), null]) {
      expect(slowdownFromTags({ 'com.android.capture.fps': tag }, 30)).toBeNull();
    }
    expect(slowdownFromTags({}, 30)).toBeNull();
    expect(slowdownFromTags({ 'com.android.capture.fps': 240 }, 0)).toBeNull();
  });
});
