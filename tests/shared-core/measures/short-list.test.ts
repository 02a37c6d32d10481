import { describe, expect, it } from 'vitest';
import { catalogue } from '#core/measures/families';
import { findReadings } from '#core/measures/find-readings';
import {
  shortListFor,
  shortListKey,
  usualShortList,
  withMoved,
  withPinned,
  withUsual,
} from '#core/measures/short-list';
import { armPositions, sidesUp, strokes } from '#core/swim-file/swim-schema';

const kick = { stroke: 'dolphin-kick', arms: 'stretched', sideUp: 'front', drill: '' } as const;
const fly = { ...kick, stroke: 'butterfly', arms: 'stroking' } as const;
const ids = catalogue.map(({ id }) => id);

describe('the short list of a drill', () => {
  it('has readings of the catalogue only, each once, for everything that can be swum', () => {
    for (const stroke of strokes)
      for (const arms of armPositions)
        for (const sideUp of sidesUp) {
          const list = usualShortList({ stroke, arms, sideUp, drill: '' });
          expect(new Set(list).size).toBe(list.length);
          for (const id of list) expect(ids).toContain(id);
        }
  });

  it('asks nothing of the hands in a kick drill, and the timing of both kicks in butterfly', () => {
    expect(usualShortList(kick).filter((id) => /entry|exit|stroke/.test(id))).toEqual([]);
    expect(usualShortList(fly)).toEqual(
      expect.arrayContaining(['kick1-top-to-entry', 'kick2-bottom-to-exit', 'kick-frequency']),
    );
  });

  it('is kept for one drill: pinned last, moved, taken off, and usual again', () => {
    const pinned = withPinned({}, kick, 'froude', true);
    expect(shortListFor(kick, pinned)).toEqual([...usualShortList(kick), 'froude']);
    expect(shortListFor(fly, pinned)).toEqual(usualShortList(fly));
    expect(shortListFor(kick, withMoved(pinned, kick, 'froude', -1)).at(-2)).toBe('froude');
    expect(withMoved(pinned, kick, 'froude', 1)).toBe(pinned);
    expect(shortListFor(kick, withPinned(pinned, kick, 'froude', false))).toEqual(usualShortList(kick));
    expect(withUsual(pinned, kick)).toEqual({});
    // an empty list is a choice; a reading of another version is passed over
    expect(shortListFor(kick, { [shortListKey(kick)]: [] })).toEqual([]);
    expect(shortListFor(kick, { [shortListKey(kick)]: ['gone', 'froude'] })).toEqual(['froude']);
  });

  it('knows a drill by the coach’s words, whatever case and spaces they are typed in', () => {
    expect(shortListKey({ ...kick, drill: ' Kick  with Fins' })).toBe(
      shortListKey({ ...kick, drill: 'kick with fins' }),
    );
    expect(shortListKey({ ...kick, drill: 'kick with fins' })).not.toBe(shortListKey(kick));
  });
});

describe('finding a reading', () => {
  const find = (query: string) =>
    findReadings(query, catalogue, (id) => (id === 'kick-frequency' ? 'Hz' : '')).map(({ id }) => id);

  it('goes by label, by unit and by other words of the trade', () => {
    expect(find('kick freq')[0]).toBe('kick-frequency');
    expect(find('hz')).toContain('kick-frequency');
    expect(find('tempo')).toEqual(expect.arrayContaining(['stroke-rate', 'kick-tempo']));
    expect(find('DPS')).toEqual(['stroke-length']);
    expect(find('streamline')).toContain('straightness');
  });

  it('needs every word, finds all for nothing typed, and nothing for what nobody says', () => {
    expect(find('depth glide')).toEqual(['depth-hip-in-glide']);
    expect(find(' ')).toHaveLength(catalogue.length);
    expect(find('bicycle')).toEqual([]);
  });
});
