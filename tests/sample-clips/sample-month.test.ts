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
import { seasonChange, seasonLines } from '#core/practice/season-change';
import { seasonSwim } from '#core/practice/season-swim';
import { trialContrasts } from '#core/practice/trial-contrast';
import { trialRow } from '#core/practice/trial-row';
import { computeReadings, readingContext } from '#core/measures/compute-readings';
import { parseSquad } from '#core/swim-file/squad-file';
import { parseSwim } from '#core/swim-file/swim-file';
import { monthScenarios } from '../../sample-clips/month-scenarios';
import { monthTrials } from '../../sample-clips/month-trials';
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

/** The month's swims as a coach has them, with every reading of each. */
const month = fileURLToPath(new URL('../../sample-clips/month/', import.meta.url));
const squad = parseSquad(text('squad.json'));
if (!squad.ok) throw new Error('the squad of the samples is damaged');
const swims = monthScenarios.map((scenario) => {
  const parsed = parseSwim(readFileSync(path.join(month, 'swims', scenario.id, 'swim.json'), 'utf8'));
  if (!parsed.ok) throw new Error(`${scenario.id}: ${parsed.fault.code}`);
  const swim = parsed.value;
  const swimmer = squad.value.swimmers.find(({ id }) => id === swim.card.swimmerId) ?? null;
  return { scenario, swim, readings: computeReadings(readingContext(swim, { swimmer, markingError: null })) };
});

describe('the swims of the invented month', () => {
  it('are filmed, marked, invented, and hold the truth that drew them', () => {
    let held = 0;
    for (const { scenario, swim, readings } of swims) {
      expect(existsSync(path.join(month, 'swims', scenario.id, scenario.file))).toBe(true);
      expect(swim.card).toMatchObject({ invented: true, date: scenario.card.date });
      const speed = readings.find(({ id }) => id === 'speed-hip');
      if (speed?.status !== 'computed') throw new Error(`no speed of ${scenario.id}`);
      // within a tenth for each; how often the interval holds the truth is counted over all
      expect(speed.value / scenario.technique.speed).toBeCloseTo(1, 1);
      if (speed.interval.low <= scenario.technique.speed && scenario.technique.speed <= speed.interval.high)
        held += 1;
      expect(readings.find(({ id }) => id === 'kick-frequency')).toMatchObject({ status: 'computed' });
    }
    expect(held).toBeGreaterThanOrEqual(swims.length - 4);
  });

  it('settle one trial and leave another open, in an order drawn by lot', () => {
    const speedOf = (id: string) => {
      const trial = monthTrials.find((each) => each.id === id);
      if (!trial) throw new Error(id);
      expect(serialiseTrial(trial)).toBe(readFileSync(path.join(month, 'trials', `${id}.json`), 'utf8'));
      const rows = trial.rows.map(({ swimId, order, tags }) => {
        const found = swims.find(({ swim }) => swim.id === swimId);
        if (!found) throw new Error(swimId);
        expect(tags).toEqual(found.swim.card.conditions);
        return trialRow(found.swim, order, tags, found.readings);
      });
      const found = trialContrasts(rows, trial.factor, 'speed-hip');
      if (!found.ok || found.contrasts.length !== 1) throw new Error('one contrast was expected');
      return found.contrasts[0];
    };
    const depth = speedOf('sample-trial-depth');
    expect(depth).toMatchObject({ status: 'contrast', verdict: 'clear' });
    if (depth?.status === 'contrast')
      expect(depth.warnings.filter(({ code }) => code !== 'mostly-marking')).toEqual([]);
    const size = speedOf('sample-trial-kick-size');
    expect(size).toMatchObject({ status: 'contrast', verdict: 'not-yet' });
  });

  it('show a clear change of Pip’s second kick over the month', () => {
    const pip = swims.flatMap(({ swim, readings }) =>
      swim.card.swimmerId === 'pip' ? [seasonSwim(swim, readings, [])] : [],
    );
    const [line] = seasonLines(pip, 'kick2-bottom-to-exit');
    expect(line?.points).toHaveLength(5);
    expect(line && seasonChange(line)).toMatchObject({ status: 'compared', verdict: 'clear' });
  });
});
