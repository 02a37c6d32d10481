import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type CoachFile, emptyCoach } from '#core/swim-file/coach-file';
import { aMark } from '#tests/renderer/a-swim';
import { aHost, type HostUnderTest, must } from './a-host';

let under: HostUnderTest;
beforeEach(async () => {
  under = await aHost();
});
afterEach(() => under.close());

const frequency = async (): Promise<{ value: number; half: number }> => {
  const opened = must(await under.ask('library/open', {}));
  const found = opened.swims[0]?.headline.find(({ id }) => id === 'kick-frequency');
  if (!found) throw new Error('a kick frequency was expected on the shelf');
  return found;
};

describe('readings on the shelf', () => {
  it('take the coach’s own marking error as soon as it is measured', async () => {
    await under.addSwim({
      events: [0, 1, 2, 3].flatMap((i) => [
        aMark(`t${i}`, 'kick-top', 5 + 28 * i),
        aMark(`b${i}`, 'kick-bottom', 17 + 28 * i),
      ]),
    });
    const assumed = await frequency();
    const remarkings = ['kick-top', 'kick-bottom'].flatMap((item) =>
      Array.from({ length: 12 }, (_, i): CoachFile['remarkings'][number] => ({
        item,
        axis: 'time',
        difference: 0.2 * (i % 2),
        frameSeconds: 1 / 60,
        of: 'marked',
        on: '2026-05-01T10:00:00.000Z',
        swimId: 'swim-1',
      })),
    );
    must(await under.ask('coach/write', { coach: { ...emptyCoach, remarkings }, baseRevision: null }));
    const measured = await frequency();
    expect(measured.value).toBeCloseTo(assumed.value, 12);
    // SD of 0, 0.2, … is 0.104 s, over √2 74 ms a mark against the 10 ms assumed, frame rounding beside both
    expect(measured.half / assumed.half).toBeGreaterThan(5);
  });
});
