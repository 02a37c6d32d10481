import { describe, expect, it } from 'vitest';
import { cameraXmlRates } from '#core/timeline/camera-xml';
import { slowdownFromCameraXml, slowdownFromRate, slowdownFromTags } from '#core/timeline/capture-rate';
import { phoneCapturedRate } from '#core/timeline/phone-slow-motion';

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

  it('is any multiple, as cameras store 240 at 29.97, 120 at 25 and 50,000 at 24', () => {
    const slowdown = (rate: number, stored: number) =>
      slowdownFromTags({ 'com.android.capture.fps': rate }, stored);
    expect(slowdown(240, 30_000 / 1001)).toBeCloseTo(8.008, 9);
    expect(slowdown(120, 25)).toBe(4.8);
    expect(slowdown(50_000, 24)).toBeCloseTo(2083.333, 3);
    expect(slowdown(100_001, 24)).toBeNull();
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

describe('slowdown from a camera’s own XML', () => {
  // the element as a camera set to 960 a second wrote it, in a published file beside its clip
  const xml = (frame: string): string =>
    `\0\0 xml <?xml version="1.0" encoding="UTF-8"?><NonRealTimeMeta xmlns="urn:schemas-professionalDisc:nonRealTimeMeta:ver.2.00">` +
    `<VideoFormat>${frame}</VideoFormat><RecordingMode type="slowAndQuickMotion"/></NonRealTimeMeta>`;
  const quick = xml(
    '<VideoFrame videoCodec="AVC_1920_1080_HP@L41" captureFps="959.04p" formatFps="23.98p"/>',
  );

  it('is the captured over the stored rate', () => {
    expect(cameraXmlRates(quick)).toEqual({ captured: 959.04, stored: 23.98 });
    expect(slowdownFromCameraXml(cameraXmlRates(quick), 24_000 / 1001)).toBeCloseTo(
      (959.04 * 1001) / 24_000,
      12,
    );
  });

  it('is not told by film at true speed, nor by film stored at another rate than the XML names', () => {
    const plain = xml('<VideoFrame videoCodec="AVC" captureFps="25p" formatFps="25p"/>');
    expect(slowdownFromCameraXml(cameraXmlRates(plain), 25)).toBeNull();
    expect(slowdownFromCameraXml(cameraXmlRates(quick), 59.94)).toBeNull();
  });

  it('believes no damaged XML, and nothing outside it', () => {
    const frame = '<VideoFrame captureFps="120p" formatFps="25p"/>';
    for (const text of [
      frame,
      xml(''),
      xml('<VideoFrame captureFps="fast" formatFps="25p"/>'),
      xml('<VideoFrame captureFps="120p"/>'),
      xml('<VideoFrame captureFps="0p" formatFps="25p"/>'),
    ])
      expect(cameraXmlRates(text)).toBeNull();
    const absurd = xml('<VideoFrame captureFps="99999999p" formatFps="25p"/>');
    expect(slowdownFromCameraXml(cameraXmlRates(absurd), 25)).toBeNull();
    expect(slowdownFromCameraXml(null, 25)).toBeNull();
    expect(slowdownFromCameraXml(cameraXmlRates(quick), 0)).toBeNull();
  });
});

describe('the rate a phone filmed at, in its own box', () => {
  const box = (name: string, ...parts: readonly (readonly number[])[]): number[] => {
    const content = parts.flat();
    const size = content.length + 8;
    return [0, 0, size >> 8, size & 0xff, ...[...name].map((letter) => letter.charCodeAt(0)), ...content];
  };
  const movie = (...inside: readonly (readonly number[])[]): Uint8Array =>
    Uint8Array.from([...box('mvhd', [1, 2, 3]), ...box('udta', box('smta', [0, 0, 0, 0], ...inside))]);
  const author = (mode: number, layers = 4): number[] => box('saut', [9, 9, 9, 9, 0, mode, 1, layers]);

  // modes and layout: androidx/media, SmtaAtomUtil
  it('is told by the recording mode, or by a rate of its own', () => {
    expect(phoneCapturedRate(movie(author(12)))).toBe(240);
    expect(phoneCapturedRate(movie(author(13)))).toBe(120);
    expect(phoneCapturedRate(movie(author(21), box('srfr', [0, 240, 0, 0])))).toBe(240);
    expect(phoneCapturedRate(movie(author(21), box('srfr', [0, 239, 0xc2, 0x8f])))).toBeCloseTo(239.76, 4);
    // the pairs may stand in either order
    expect(phoneCapturedRate(movie(box('saut', [9, 9, 9, 9, 1, 4, 0, 13])))).toBe(120);
    expect(slowdownFromRate(240, 30)).toBe(8);
    expect(slowdownFromRate(240, 240)).toBeNull();
  });

  it('is not told by other modes, nor by damaged boxes', () => {
    expect(phoneCapturedRate(movie(author(0)))).toBeNull();
    expect(phoneCapturedRate(movie(author(7)))).toBeNull();
    expect(phoneCapturedRate(movie(author(21)))).toBeNull();
    expect(phoneCapturedRate(movie(box('saut', [9, 9])))).toBeNull();
    expect(phoneCapturedRate(new Uint8Array())).toBeNull();
    const whole = movie(author(21), box('srfr', [0, 240, 0, 0]));
    for (let length = 0; length < whole.length; length++)
      expect([null, 240]).toContain(phoneCapturedRate(whole.slice(0, length)));
  });
});
