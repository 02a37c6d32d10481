import { describe, expect, it } from 'vitest';
import { type Squad, squadFileVersion } from '#core/swim-file/squad-schema';
import { filterSwims, noFilter } from '../../../renderer/swims/filter-swims';
import { newSwimmer } from '../../../renderer/card/write-swimmer';
import { aSummary } from '../a-summary';

const squad: Squad = {
  format: 'submark-squad',
  version: squadFileVersion,
  swimmers: [newSwimmer('s-pip', 'Pip'), newSwimmer('s-ada', 'Ada')],
};
const swims = [
  aSummary('old', { swimmerId: 's-pip', swimmerName: 'Pip', date: '2026-01-02' }),
  aSummary('new', { swimmerId: 's-pip', swimmerName: 'Pip', date: '2026-05-02', aids: ['fins'] }),
  aSummary('kick', {
    swimmerId: 's-ada',
    swimmerName: 'Ada as she was',
    stroke: 'dolphin-kick',
    arms: 'folded',
    view: 'below',
    note: 'head too high',
  }),
  aSummary('nobody', {}),
];
const idsOf = (filter: Partial<typeof noFilter>): string[] =>
  filterSwims(swims, squad, { ...noFilter, ...filter }).flatMap((group) =>
    group.swims.map((each) => each.id),
  );

describe('the shelf', () => {
  it('groups by swimmer under the squad’s name, newest swim first', () => {
    const groups = filterSwims(swims, squad, noFilter);
    expect(groups.map((group) => group.name)).toEqual(['Ada', 'Pip', 'Swimmer not named']);
    expect(groups[1]?.swims.map((each) => each.id)).toEqual(['new', 'old']);
  });

  it('finds every word typed, in any order and case, also in notes and arms', () => {
    expect(idsOf({ text: 'PIP fins' })).toEqual(['new']);
    expect(idsOf({ text: 'fins pip' })).toEqual(['new']);
    expect(idsOf({ text: 'folded high' })).toEqual(['kick']);
    expect(idsOf({ text: 'ada' })).toEqual(['kick']);
    expect(idsOf({ text: 'ada fins' })).toEqual([]);
  });

  it('filters by swimmer, stroke, aids and view, each alone', () => {
    expect(idsOf({ swimmer: 's-ada' })).toEqual(['kick']);
    expect(idsOf({ stroke: 'dolphin-kick' })).toEqual(['kick']);
    expect(idsOf({ aids: 'with' })).toEqual(['new']);
    expect(idsOf({ aids: 'without' })).toEqual(['kick', 'old', 'nobody']);
    expect(idsOf({ view: 'below' })).toEqual(['kick']);
  });

  it('shows every swim once when nothing is asked', () => {
    expect(idsOf({}).sort()).toEqual(['kick', 'new', 'nobody', 'old']);
  });
});
