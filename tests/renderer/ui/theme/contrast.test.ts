import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const read = (name: string): string =>
  readFileSync(new URL(`../../../../renderer/ui/theme/${name}`, import.meta.url), 'utf8');

/** Hex colours a rule block sets, by custom property. */
function tokensOf(css: string, selector: string): Map<string, string> {
  const from = css.indexOf(`${selector} {`);
  if (from < 0) throw new Error(`no block ${selector}`);
  const block = css.slice(from, css.indexOf('}', from));
  return new Map(
    [...block.matchAll(/--([a-z-]+):\s*(#[0-9a-f]{6});/g)].map(([, name, hex]) => [name ?? '', hex ?? '']),
  );
}

const plain = tokensOf(read('tokens.css'), ':root');
const themes = read('themes.css');
const light = tokensOf(themes, ':root[data-theme="light"]');
const glare = tokensOf(themes, ':root[data-theme="glare"]');
const looks = {
  dim: plain,
  light: new Map([...plain, ...light]),
  glare: new Map([...plain, ...glare]),
} as const;

/** Relative luminance, WCAG 2.2 definition. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
}
function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
}

describe('contrast', () => {
  it('is measured as the definition says: black on white 21, a colour on itself 1', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#3fa3bd', '#3fa3bd')).toBe(1);
  });

  for (const [look, tokens] of Object.entries(looks)) {
    const token = (name: string): string => {
      const hex = tokens.get(name);
      if (!hex) throw new Error(`no token --${name}`);
      return hex;
    };
    // WCAG 2.2, 1.4.3 (AA) and 1.4.6 (AAA)
    const least = look === 'glare' ? 7 : 4.5;
    for (const ground of ['ground', 'panel', 'raised']) {
      for (const ink of ['ink', 'quiet', 'accent', 'danger'])
        it(`of --${ink} text on --${ground} is at least ${least} in ${look}`, () => {
          expect(contrast(token(ink), token(ground))).toBeGreaterThanOrEqual(least);
        });
      // 1.4.11: what tells a control or its focus from its ground
      for (const edge of ['edge', 'focus', 'met', 'unmet'])
        it(`of --${edge} on --${ground} is at least 3 in ${look}`, () => {
          expect(contrast(token(edge), token(ground))).toBeGreaterThanOrEqual(3);
        });
    }
    it(`of words on the accent is at least ${least} in ${look}`, () => {
      expect(contrast(token('on-accent'), token('accent'))).toBeGreaterThanOrEqual(least);
    });
  }
});
