import { describe, expect, it } from 'vitest';
import { type GapToLabel, placeGapLabels } from '../../../renderer/score/gap-labels';

const words = { ms: '−67 ms', percent: '−5.7 %' };
const tie = (start: number, change: Partial<GapToLabel> = {}): GapToLabel => ({
  first: true,
  before: false,
  start,
  left: start + 8,
  words,
  ...change,
});
const room = { right: 900, twoLines: true, ownRow: true };

describe('the words of the score’s ties', () => {
  it('stand after their tie where there is room', () => {
    expect(placeGapLabels([tie(100), tie(200)], room)).toMatchObject([
      { left: 108, shown: words },
      { left: 208, shown: words },
    ]);
  });

  it('of a tie close before the next stroke’s stand before it, ending clear of it', () => {
    const [, second, third] = placeGapLabels([tie(100), tie(230), tie(262)], room);
    expect(second).toMatchObject({ left: 224, end: true, shown: words });
    expect(third).toMatchObject({ left: 270, shown: words });
  });

  it('are left out, never cut or laid over others, where there is no room on either side', () => {
    const [first, second] = placeGapLabels([tie(100), tie(160), tie(190)], room);
    expect(first?.shown).not.toBeNull();
    expect(second?.shown).toBeNull();
  });
});
