import { describe, expect, it } from 'vitest';
import { isDisposableAvc, isInstantAvc } from '#core/timeline/avc-disposable';
import { avcLengthBytes } from '#core/timeline/avc-units';

/** A unit's first byte: how much others lean on it, and its type (ITU-T H.264, 7.3.1). */
const header = (leans: number, type: number): number => (leans << 5) | type;
const withLengths = (...units: readonly number[][]): Uint8Array =>
  Uint8Array.from(units.flatMap((unit) => [0, 0, 0, unit.length, ...unit]));
const withStartCodes = (...units: readonly number[][]): Uint8Array =>
  Uint8Array.from(units.flatMap((unit) => [0, 0, 1, ...unit]));

const supplement = [header(0, 6), 9, 9];
const free = [header(0, 1), 1, 2, 3];
const leant = [header(2, 1), 1, 2, 3];
const key = [header(3, 5), 7];

describe('a picture that no other leans on', () => {
  for (const [name, make, length] of [
    ['lengths', withLengths, 4],
    ['start codes', withStartCodes, null],
  ] as const) {
    it(`is told from its slices, with ${name}`, () => {
      expect(isDisposableAvc(make(supplement, free, free), length)).toBe(true);
      expect(isDisposableAvc(make(supplement, leant), length)).toBe(false);
      // of two fields one may be leant on
      expect(isDisposableAvc(make(free, leant), length)).toBe(false);
      expect(isDisposableAvc(make(key), length)).toBe(false);
      expect(isDisposableAvc(make(supplement), length)).toBe(false);
    });

    it(`is not the one from which all starts anew, with ${name}`, () => {
      expect(isInstantAvc(make(supplement, key), length)).toBe(true);
      expect(isInstantAvc(make(supplement, leant), length)).toBe(false);
      expect(isInstantAvc(new Uint8Array(), length)).toBe(false);
    });
  }

  it('is never told from nothing or from nonsense lengths', () => {
    expect(isDisposableAvc(new Uint8Array(), 4)).toBe(false);
    expect(isDisposableAvc(new Uint8Array(64), 4)).toBe(false);
    expect(avcLengthBytes(null)).toBeNull();
    expect(avcLengthBytes(Uint8Array.from([1, 100, 0, 13, 0xff]))).toBe(4);
  });
});
