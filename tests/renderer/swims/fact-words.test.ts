import { describe, expect, it } from 'vitest';
import { slowMotionWords } from '../../../renderer/card/slow-motion-words';
import { damageWords } from '#core/timeline/damage-words';
import { codecWords } from '#core/timeline/codec-words';
import { bytesWords, lengthWords, rateWords } from '../../../renderer/swims/fact-words';

describe('the words of a clip', () => {
  it('tell a constant rate from a variable one', () => {
    expect(rateWords({ rate: 60_000 / 1001, evenRate: true })).toBe('59.94 a second, constant');
    expect(rateWords({ rate: 30, evenRate: false })).toBe('about 30 a second, variable');
  });

  it('tell the length played and the length in life', () => {
    const table = { ticksPerSecond: 30, starts: [15, 16, 17], endTick: 15 + 480 };
    expect(lengthWords(table, 1)).toBe('16.0 s');
    expect(lengthWords(table, null)).toBe('16.0 s');
    expect(lengthWords(table, 8)).toBe('16.0 s played, 2.0 s in life');
  });

  it('name codecs as the trade does, and unknown ones by their own string', () => {
    expect(codecWords('avc1.64001f')).toBe('H.264');
    expect(codecWords('vp09.00.31.08')).toBe('VP9');
    expect(codecWords('xyz1')).toBe('xyz1');
  });

  it('count bytes as disks do', () => {
    expect(bytesWords(0)).toBe('1 kB');
    expect(bytesWords(833_000)).toBe('833 kB');
    expect(bytesWords(2_500_000_000)).toBe('2.50 GB');
  });
});

describe('the words of damage', () => {
  it('say “at least” where others may lean on what is broken, and nothing of whole film', () => {
    expect(damageWords({ patched: 0, missing: 0 })).toBe(null);
    expect(damageWords({ patched: 3, missing: 0 })).toBe('at least 3 pictures are broken');
    expect(damageWords({ patched: 1, missing: 2 })).toBe(
      'at least 1 picture is broken, 2 pictures can’t be decoded',
    );
  });
});

describe('the effect of slow motion', () => {
  it('is told in kicks a second: 2 Hz slowed 8 times look like 0.25', () => {
    expect(slowMotionWords({ rate: 30, taggedSlowdown: 8 }, 8)).toBe(
      'The file says it was filmed at 240 pictures a second. It plays 8× slower than life. Two kicks a second look like 0.25. Submark reads them as 2.',
    );
  });

  it('is none where a phone keeps the rate of filming', () => {
    expect(slowMotionWords({ rate: 240, taggedSlowdown: 1 }, 1)).toBe(
      'The file keeps the 240 pictures a second it was filmed at; phones only play it slowed. It plays at true speed: one second of film is one second in the water.',
    );
  });

  it('says what hangs on the answer while there is none', () => {
    expect(slowMotionWords({ rate: 25, taggedSlowdown: null }, null)).toContain('25 pictures a second');
  });

  it('doubts an answer that makes the film faster than life', () => {
    expect(slowMotionWords({ rate: 60, taggedSlowdown: null }, 0.5)).toContain('2× faster than life');
  });
});
