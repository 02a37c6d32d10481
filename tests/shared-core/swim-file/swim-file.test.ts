import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { schemaTexts } from '#electron/commands/write-schema';
import { coachFormat, parseCoach } from '#core/swim-file/coach-file';
import { type FileFormat, parseFile } from '#core/swim-file/parse-file';
import { parseSquad, squadFormat } from '#core/swim-file/squad-file';
import { parseSwim, serialiseSwim, swimFormat } from '#core/swim-file/swim-file';
import { swimFileVersion } from '#core/swim-file/swim-schema';
import { targetInForce } from '#core/swim-file/target-in-force';
import { aSwim } from './a-swim';

const frozen = (name: string): string => readFileSync(new URL(`./frozen/${name}`, import.meta.url), 'utf8');

describe('a swim file', () => {
  it('gives back the swim it was written from, and the same text again', () => {
    const text = serialiseSwim(aSwim());
    const parsed = parseSwim(text);
    expect(parsed).toEqual({ ok: true, value: aSwim() });
    expect(parsed.ok && serialiseSwim(parsed.value)).toBe(text);
  });

  it('is written the same whatever the order of keys and marks in memory', () => {
    const swim = aSwim();
    const shuffled = Object.fromEntries(Object.entries(swim).reverse()) as typeof swim;
    const backward = { ...shuffled, events: [...swim.events].reverse() };
    expect(serialiseSwim(backward)).toBe(serialiseSwim(swim));
  });

  it('changes by one line when one mark moves', () => {
    const swim = aSwim();
    const moved = {
      ...swim,
      events: swim.events.map((each) => (each.id === 'e2' ? { ...each, frame: 13 } : each)),
    };
    const before = serialiseSwim(swim).split('\n');
    const after = serialiseSwim(moved).split('\n');
    expect(after).toHaveLength(before.length);
    expect(after.filter((line, i) => line !== before[i])).toHaveLength(1);
  });

  it('says which fault a file has', () => {
    const raw = JSON.parse(serialiseSwim(aSwim())) as Record<string, unknown>;
    const fault = (text: string) => {
      const parsed = parseSwim(text);
      return parsed.ok ? null : parsed.fault;
    };
    expect(fault('{"format":')).toEqual({ code: 'not-json' });
    expect(fault('')).toEqual({ code: 'not-json' });
    expect(fault('[]')).toEqual({ code: 'other-format', expected: 'submark-swim' });
    expect(fault(JSON.stringify({ ...raw, format: 'other' }))).toMatchObject({ code: 'other-format' });
    expect(fault(JSON.stringify({ ...raw, version: 7 }))).toEqual({
      code: 'newer-version',
      needs: 7,
      known: swimFileVersion,
    });
    expect(fault(JSON.stringify({ ...raw, version: 'one' }))).toMatchObject({
      code: 'damaged',
      where: 'version',
    });
    expect(fault(JSON.stringify({ ...raw, events: [{ id: 'x' }] }))).toMatchObject({
      code: 'damaged',
      where: expect.stringMatching(/^events\.0/) as string,
    });
    expect(fault(JSON.stringify({ ...raw, surprise: 1 }))).toMatchObject({ code: 'damaged' });
  });

  it('refuses points that no picture could hold, which would leave readings without a number', () => {
    const far = aSwim({ postures: [{ frame: 3, points: { hip: { x: 1e308, y: -1e308 } }, hidden: [] }] });
    expect(parseSwim(JSON.stringify(far))).toMatchObject({
      ok: false,
      fault: { code: 'damaged', where: 'postures.0.points.hip.x' },
    });
  });

  it('never throws, whatever text or mangled file it is given', () => {
    const good = serialiseSwim(aSwim());
    const mangled = fc
      .tuple(fc.nat(good.length - 1), fc.nat(40), fc.string({ maxLength: 12 }))
      .map(([at, cut, put]) => good.slice(0, at) + put + good.slice(at + cut));
    fc.assert(
      fc.property(fc.oneof(mangled, fc.string(), fc.json()), (text) => {
        const parsed = parseSwim(text);
        if (parsed.ok) expect(parseSwim(serialiseSwim(parsed.value))).toEqual(parsed);
        else expect(['not-json', 'other-format', 'newer-version', 'damaged']).toContain(parsed.fault.code);
      }),
      { numRuns: 500, seed: 1 },
    );
  });
});

describe('files of released versions', () => {
  it('version 1 of the swim file opens as what it said, with nothing set that it could not say', () => {
    expect(parseSwim(frozen('swim-v1.json'))).toEqual({ ok: true, value: aSwim() });
  });

  it('version 2 of the swim file opens with a camera that nothing is known of', () => {
    const parsed = parseSwim(frozen('swim-v2.json'));
    expect(parsed.ok && parsed.value.followed[0]?.points).toHaveLength(2);
    expect(parsed.ok && [parsed.value.cameraPath, parsed.value.scene.still]).toEqual([[], []]);
  });

  it('version 3 of the swim file opens with a camera of which no turn is known', () => {
    const parsed = parseSwim(frozen('swim-v3.json'));
    expect(parsed.ok && parsed.value.cameraPath.map(({ turned }) => turned)).toEqual([null]);
  });

  it('version 4 of the swim file opens with nothing seen', () => {
    const parsed = parseSwim(frozen('swim-v4.json'));
    expect(parsed.ok && parsed.value.seen).toEqual([]);
    expect(parsed.ok && parsed.value.followed[0]?.points).toHaveLength(2);
  });

  it('version 5 of the swim file opens and is written back unchanged', () => {
    const parsed = parseSwim(frozen('swim-v5.json'));
    expect(parsed.ok && parsed.value.seen[0]?.points[1]).toEqual([318.5, 149.75, 3.5]);
    expect(parsed.ok && parsed.value.cameraPath[0]?.turned).toEqual({ degrees: 0.12, zoom: 0.003 });
    expect(parsed.ok && parsed.value.cameraPath[0]?.moved[0]).toHaveLength(3);
    expect(parsed.ok && parsed.value.scene.still[0]).toHaveLength(2);
    expect(parsed.ok && serialiseSwim(parsed.value)).toBe(frozen('swim-v5.json'));
  });

  it('calls a camera path damaged whose rows and frames do not agree', () => {
    const raw = JSON.parse(frozen('swim-v4.json')) as { cameraPath: { frames: number[] }[] };
    raw.cameraPath[0]?.frames.pop();
    expect(parseSwim(JSON.stringify(raw))).toMatchObject({ ok: false, fault: { code: 'damaged' } });
  });

  it('a migration changes nothing of the wrong kind, so that the file is called damaged and not emptied', () => {
    for (const broken of ['{"events":{}}', '{"scene":7}', '{"events":[3]}', '{"clip":null}', '{"card":[]}']) {
      const text = JSON.stringify({ ...JSON.parse(frozen('swim-v1.json')), ...JSON.parse(broken) });
      expect(parseSwim(text)).toMatchObject({ ok: false, fault: { code: 'damaged' } });
    }
    for (const broken of ['[null]', '{}', '[{"targets":3}]', '[{"targets":[null]}]']) {
      const text = JSON.stringify({ ...JSON.parse(frozen('squad-v1.json')), swimmers: JSON.parse(broken) });
      expect(parseSquad(text)).toMatchObject({ ok: false, fault: { code: 'damaged' } });
    }
    const coach = JSON.stringify({ ...JSON.parse(frozen('coach-v1.json')), remarkings: {} });
    expect(parseCoach(coach)).toMatchObject({ ok: false, fault: { code: 'damaged' } });
  });

  it('version 1 of the squad file opens', () => {
    const parsed = parseSquad(frozen('squad-v1.json'));
    expect(parsed.ok && parsed.value.swimmers[0]?.streamlineMetres).toBe(2.1);
  });

  // a version without a frozen file would be a migration never exercised
  it.each([
    ['swim', swimFormat, parseSwim],
    ['squad', squadFormat, parseSquad],
    ['coach', coachFormat, parseCoach],
  ] as const)(
    'every version of the %s file has a migration and a frozen file that opens',
    (name, format, parse) => {
      const older = Array.from({ length: format.version - 1 }, (_, i) => i + 1);
      expect(Object.keys(format.migrations).map(Number)).toEqual(older);
      for (let version = 1; version <= format.version; version++) {
        const text = frozen(`${name}-v${version}.json`);
        expect((JSON.parse(text) as { version: number }).version).toBe(version);
        expect(parse(text).ok).toBe(true);
      }
    },
  );

  it('climbs every step of a chain of migrations, in order', () => {
    const format: FileFormat<{ format: 'x'; version: 3; path: string }> = {
      format: 'x',
      version: 3,
      schema: z.strictObject({ format: z.literal('x'), version: z.literal(3), path: z.string() }),
      migrations: {
        1: (old) => ({ ...old, version: 2, path: `${String(old['path'])}b` }),
        2: (old) => ({ ...old, version: 3, path: `${String(old['path'])}c` }),
      },
    };
    const parsed = parseFile(format, JSON.stringify({ format: 'x', version: 1, path: 'a' }));
    expect(parsed).toEqual({ ok: true, value: { format: 'x', version: 3, path: 'abc' } });
  });
});

describe('a target', () => {
  const target = (low: number | null, from: string | null) => ({
    reading: 'stroke-count',
    low,
    high: null,
    from,
  });
  it('is the one with the latest first day, wherever it stands', () => {
    const targets = [target(8, '2026-05-01'), target(9, '2026-03-01'), target(10, null)];
    expect(targetInForce({ targets }, 'stroke-count')?.low).toBe(8);
    expect(targetInForce({ targets: [...targets].reverse() }, 'stroke-count')?.low).toBe(8);
  });

  it('is none when the latest gave it up, or another reading is asked', () => {
    const targets = [target(8, '2026-05-01'), target(null, '2026-06-01')];
    expect(targetInForce({ targets }, 'stroke-count')).toBeNull();
    expect(targetInForce({ targets: targets.slice(0, 1) }, 'kick-frequency')).toBeNull();
  });
});

describe('the JSON Schemas in docs/', () => {
  it.each([...schemaTexts()])('%s is what the code checks against', (name, text) => {
    expect(readFileSync(new URL(`../../../docs/${name}`, import.meta.url), 'utf8')).toBe(text);
  });
});
