import { describe, expect, it } from 'vitest';
import { froudeEfficiency, strouhalNumber } from '#core/measures/products/propulsion';

describe('propulsion', () => {
  it('has Strouhal number 0.8333 at f·A 0.90 and U 1.08', () => {
    // computed; Wądrzyk, Nosiadek, Staszkiewicz 2017, Human Movement 18(4) publish 0.83 for 35 children
    expect(strouhalNumber(1, 0.9, 1.08)).toBeCloseTo(0.8333, 4);
    // the ratio of their means, 2.00·0.46/1.08, is 0.852: not the mean of the ratios
    expect(strouhalNumber(2, 0.46, 1.08)).toBeCloseTo(0.852, 3);
  });

  it('has Froude efficiency 0.6073 at U 0.8 m/s and c 3.728 m/s', () => {
    // Zamparo et al. 2002, J Exp Biol 205:2665–2676: c = 2.33·f, f 1.6 Hz; published 0.61 to 0.62
    expect(froudeEfficiency(0.8, 2.33 * 1.6)).toBeCloseTo(0.6073, 4);
  });

  it('is whole for a wave no faster than the swimmer, and a half for a swimmer who stands', () => {
    expect(froudeEfficiency(2, 2)).toBe(1);
    expect(froudeEfficiency(0, 2)).toBe(0.5);
  });
});
