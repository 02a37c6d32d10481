import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { catalogue } from '#core/measures/families';
import type { ReadingDefinition } from '#core/measures/reading';
import { DefinitionDrawing } from '../../../renderer/readings/definition-drawing';

/** Where a definition may come from: a paper with its year, a rule, our own, or coaching without a source. */
const knownSource =
  /\b(19|20)\d\d\b|World Aquatics|[Oo]ur own definition|[Cc]ommon (definition|practice, no source)|Convention of the sum: ours|Barbosa/;

/**
 * Numbers that MEASURES gives or that follow from the definition: straight is 180°, even is 1, the rule is 15 m, and the
 * published totals of elite swimmers (Seifert, Chollet, Sanders 2010). Anything else would be a norm of our own making.
 */
const allowedNumbers = new Set(['0', '1', '180', '15', '23.3', '19', '2010', '2', '3']);

/** One measure told several ways (at events, as a share, of some strokes, another unit) has one drawing. */
const measureOf = ({ id }: ReadingDefinition): string =>
  id
    .split(/-at-|-in-glide/)[0]
    ?.replace(/-(percent|breathing|not|relative|share)(?=-|$)/g, '')
    .replace(/^kick-(tempo|rate-per-minute)$/, 'kick-frequency')
    // T1 and T4 are the first and the last offset by their published names
    .replace(/^kick1-top-to-entry$/, 'gap-t1')
    .replace(/^kick2-bottom-to-exit$/, 'gap-t4')
    // by marks or by scale, it is the same way
    .replace(/^(underwater-(distance|speed))(-marks|-scale)?$/, '$1') ?? id;

describe('every reading of the catalogue', () => {
  it.each(catalogue.map((each) => [each.id, each] as const))('%s is told whole', (_, definition) => {
    const { label, brief, forCoach, forSwimmer, source } = definition;
    for (const sentence of [definition.definition, forCoach, forSwimmer]) {
      expect(sentence).toMatch(/^\p{Lu}.*\.$/u);
      expect(sentence.length).toBeGreaterThan(15);
    }
    expect(new Set([definition.definition, forCoach, forSwimmer]).size).toBe(3);
    expect([label, brief].every((each) => each.trim().length > 0)).toBe(true);
    expect(source).toMatch(knownSource);
  });

  it('never tells the swimmer of another one, and speaks to the swimmer', () => {
    for (const { id, forSwimmer } of catalogue) expect(forSwimmer, id).not.toMatch(/\bthe swimmer\b/);
  });

  it('invents no norm', () => {
    for (const { id, forCoach, forSwimmer } of catalogue)
      for (const [number] of `${forCoach} ${forSwimmer}`.replace(/\bT\d/g, '').matchAll(/\d+(\.\d+)?/g))
        expect(allowedNumbers.has(number), `${id}: ${number}`).toBe(true);
  });

  it('has a drawing of its own measure, shared only by the same measure told another way', () => {
    const measures = new Map<string, Set<string>>();
    for (const definition of catalogue) {
      const drawn = renderToStaticMarkup(createElement(DefinitionDrawing, { definition })).replace(
        /(aria-label|data-drawing)="[^"]*"/g,
        '',
      );
      measures.set(drawn, (measures.get(drawn) ?? new Set()).add(measureOf(definition)));
    }
    for (const told of measures.values()) expect([...told]).toHaveLength(1);
  });
});
