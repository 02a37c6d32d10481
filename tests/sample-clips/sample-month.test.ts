import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { countsHeld } from '#core/practice/count-held';
import { itemCautions } from '#core/practice/item-cautions';
import { drillById } from '#core/practice/drill-library';
import { parsePractice, serialisePractice } from '#core/practice/practice-file';
import { danglingEntries } from '#core/practice/swum-part';
import { parseTrial, serialiseTrial } from '#core/practice/trial-schema';
import { samplePractices, sampleTrial } from '../../sample-clips/make-month';

const library = fileURLToPath(new URL('../../sample-clips/library/', import.meta.url));
const text = (...parts: string[]): string => readFileSync(path.join(library, ...parts), 'utf8');

describe('the invented month', () => {
  it.each(samplePractices())('on disk is what its script makes: $title', (practice) => {
    const kept = text('practices', `${practice.id}.json`);
    expect(kept).toBe(serialisePractice(practice));
    expect(parsePractice(kept)).toEqual({ ok: true, value: practice });
    expect(practice.invented).toBe(true);
    expect(danglingEntries(practice)).toEqual([]);
    for (const { swimId } of practice.log)
      if (swimId) expect(existsSync(path.join(library, 'swims', swimId, 'swim.json'))).toBe(true);
    // what goes under water is planned with its rest and its cautions
    for (const item of practice.items)
      expect(itemCautions(item, drillById(item.drillId ?? '', [])).warnings).toEqual([]);
  });

  it('has counts that held and counts that were lost', () => {
    const verdicts = samplePractices().flatMap((each) =>
      countsHeld(each).compared.map(({ verdict }) => verdict),
    );
    expect(new Set(verdicts)).toEqual(new Set(['held', 'lost']));
  });

  it('has a trial over sample swims', () => {
    expect(parseTrial(text('trials', `${sampleTrial.id}.json`))).toEqual({ ok: true, value: sampleTrial });
    expect(text('trials', `${sampleTrial.id}.json`)).toBe(serialiseTrial(sampleTrial));
  });
});
