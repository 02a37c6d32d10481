import { describe, expect, it } from 'vitest';
import { aidsWords, swumWords } from '#core/swim-file/card-words';
import { firstCard, rememberCard } from '../../../renderer/card/remembered-card';
import { withStroke } from '../../../renderer/card/with-stroke';
import { aCard } from '../a-summary';

function aStorage() {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string): string | null => kept.get(key) ?? null,
    setItem: (key: string, value: string): void => {
      kept.set(key, value);
    },
    spoil: (): void => {
      for (const key of kept.keys()) kept.set(key, '{"stroke": "backst');
    },
  };
}

describe('card words', () => {
  it('leave out what the drill’s own words say already', () => {
    expect(swumWords(aCard({ drill: 'Kick with arms folded', arms: 'folded', effort: 'easy' }))).toEqual({
      what: 'Kick with arms folded',
      how: ['easy'],
    });
    expect(swumWords(aCard({ stroke: 'dolphin-kick', arms: 'stretched', sideUp: 'back' }))).toEqual({
      what: 'dolphin kick',
      how: ['arms stretched', 'on the back'],
    });
  });

  it('say that feet are bare unless they are finned', () => {
    expect(aidsWords([])).toBe('bare feet');
    expect(aidsWords(['snorkel'])).toBe('snorkel, bare feet');
    expect(aidsWords(['fins', 'snorkel'])).toBe('fins, snorkel');
  });
});

describe('a new card', () => {
  it('begins as the last one was filled in, on the clip’s own day, without its note', () => {
    const storage = aStorage();
    const last = aCard({
      swimmerId: 's1',
      swimmerName: 'Pip',
      aids: ['fins'],
      note: 'late',
      date: '2026-01-01',
    });
    rememberCard(storage, last);
    expect(firstCard(storage, '2026-05-14', () => true)).toEqual({
      ...last,
      date: '2026-05-14',
      note: '',
      invented: false,
    });
  });

  it('forgets a swimmer who is no longer in the squad', () => {
    const storage = aStorage();
    rememberCard(storage, aCard({ swimmerId: 's1', swimmerName: 'Pip', aids: ['fins'] }));
    const card = firstCard(storage, '2026-05-14', () => false);
    expect([card.swimmerId, card.swimmerName, card.aids]).toEqual([null, '', ['fins']]);
  });

  it('is the plain one when what was kept can’t be read', () => {
    const storage = aStorage();
    const plain = firstCard(storage, '2026-05-14', () => true);
    rememberCard(storage, aCard({ aids: ['fins'] }));
    storage.spoil();
    expect(firstCard(storage, '2026-05-14', () => true)).toEqual(plain);
  });
});

describe('another stroke', () => {
  it('takes arms along that fit only the one before, and leaves others alone', () => {
    expect(withStroke(aCard({ arms: 'stroking' }), 'dolphin-kick').arms).toBe('stretched');
    expect(withStroke(aCard({ arms: 'folded' }), 'dolphin-kick').arms).toBe('folded');
    const there = withStroke(aCard({ arms: 'stroking' }), 'dolphin-kick');
    expect(withStroke(there, 'butterfly').arms).toBe('stroking');
  });
});
