import { describe, expect, it } from 'vitest';
import type { EventProposal } from '#core/follow/propose-events';
import { mostDoubtful, reviewGroups } from '#core/follow/review-groups';
import type { EventKind } from '#core/marks/event-kind';

const proposal = (kind: EventKind, time: number, change: Partial<EventProposal> = {}): EventProposal => ({
  id: `${kind}-${time}`,
  kind,
  frame: Math.round(60 * time),
  frames: 0,
  time,
  sdSeconds: 0.02,
  unsure: false,
  ...change,
});
const kicks = (count: number, period: number): readonly EventProposal[] =>
  Array.from({ length: count }, (_, i) => [
    proposal('kick-top', 0.2 + i * period),
    proposal('kick-bottom', 0.2 + (i + 0.5) * period),
  ]).flat();
const butterfly = { stroke: 'butterfly' } as const;
const kicking = { stroke: 'dolphin-kick' } as const;

describe('proposals by stroke', () => {
  it('go from hand entry to hand entry, a kick just before the hands with their stroke', () => {
    const all = [
      proposal('entry', 0.5),
      proposal('kick-top', 0.45),
      proposal('exit', 1.3),
      proposal('kick-top', 1.58),
      proposal('entry', 1.7),
    ];
    expect(reviewGroups(all, [], butterfly).map(({ open }) => open.map(({ time }) => time))).toEqual([
      [0.45, 0.5, 1.3],
      [1.58, 1.7],
    ]);
  });

  it('are two kicks of butterfly without hands, three of kicking', () => {
    const sizes = (stroke: typeof butterfly | typeof kicking): readonly number[] =>
      reviewGroups(kicks(6, 0.5), [], stroke).map(({ open }) => open.length);
    expect(sizes(butterfly)).toEqual([4, 4, 4]);
    expect(sizes(kicking)).toEqual([6, 6]);
    expect(reviewGroups([], [], butterfly)).toEqual([]);
  });

  it('keep their number while moments are accepted, whichever come first', () => {
    const all = kicks(4, 0.5);
    for (let accepted = 0; accepted <= all.length; accepted++) {
      const groups = reviewGroups(all.slice(accepted), all.slice(0, accepted), butterfly);
      expect(groups).toHaveLength(2);
      expect(groups.reduce((sum, each) => sum + each.open.length + each.accepted, 0)).toBe(all.length);
    }
  });
});

describe('the most doubtful proposal', () => {
  it('is a less sure one before all, else the widest', () => {
    const wide = proposal('kick-top', 1, { sdSeconds: 0.08 });
    const unsure = proposal('kick-top', 2, { sdSeconds: 0.05, unsure: true });
    expect(mostDoubtful([proposal('kick-top', 0), wide])).toBe(wide);
    expect(mostDoubtful([proposal('kick-top', 0), unsure, wide])).toBe(unsure);
    expect(mostDoubtful([])).toBeNull();
  });
});
