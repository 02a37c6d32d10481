import fc from 'fast-check';
import { expect, it } from 'vitest';
import { countColours, emptyColourCount, limbContrast } from '#core/follow/limb-contrast';
import { packColour, packedColours, unpackColour } from '#core/follow/packed-colour';
import { skinContrast } from '#core/follow/skin-contrast';

const [width, height] = [120, 80];
const skin = packColour(150, 110, 150);
const water = packColour(120, 150, 100);
/** A level limb between two places, of one colour, in water. */
function picture(limb: number, rest: number) {
  const colours = new Uint16Array(width * height).fill(rest);
  for (let y = 34; y <= 46; y++) for (let x = 30; x <= 90; x++) colours[y * width + x] = limb;
  return { width, height, colours };
}
const limbs = [{ from: { x: 30, y: 40 }, to: { x: 90, y: 40 }, halfWidth: 12, bare: true }];

it('sees the colours of marked limbs bright and those around the swimmer dark, whatever they are', () => {
  for (const [limb, rest] of [
    [skin, water],
    [water, skin],
  ] as const) {
    const count = emptyColourCount();
    countColours(count, picture(limb, rest), limbs);
    const table = limbContrast(count);
    expect(table[limb]).toBeGreaterThan(200);
    expect(table[rest]).toBeLessThan(60);
    // a colour never met says nothing
    expect(table[packColour(10, 10, 10)]).toBe(128);
  }
});

it('learns nothing from trunk and head, and keeps them out of what lies around', () => {
  const count = emptyColourCount();
  countColours(
    count,
    picture(skin, water),
    limbs.map((limb) => ({ ...limb, bare: false })),
  );
  expect(count.limb[skin]).toBe(0);
  expect(count.rest[skin]).toBe(0);
});

it('falls back on redness when too little is marked', () => {
  const table = limbContrast(emptyColourCount());
  const { brightness, redness } = unpackColour(skin);
  expect(table[skin]).toBe(skinContrast(brightness, redness));
});

it('packs a colour into a place of the table and gives it back to within its steps', () => {
  const level = fc.integer({ min: 0, max: 255 });
  fc.assert(
    fc.property(level, level, level, (brightness, blueness, redness) => {
      const packed = packColour(brightness, blueness, redness);
      expect(packed).toBeLessThan(packedColours);
      const back = unpackColour(packed);
      expect(Math.abs(back.brightness - brightness)).toBeLessThanOrEqual(8);
      expect(Math.abs(back.blueness - blueness)).toBeLessThanOrEqual(2);
      expect(Math.abs(back.redness - redness)).toBeLessThanOrEqual(2);
    }),
  );
});
