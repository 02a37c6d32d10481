import { describe, expect, it } from 'vitest';
import { staffOf } from '#core/marks/event-kind';
import { passFor } from '../../../renderer/open-swim/guided-pass';

describe('the guided pass', () => {
  it('goes from one hand entry past the next with two kicks between: seven moments of the hands, four of the feet', () => {
    const pass = passFor({ stroke: 'butterfly' });
    expect(pass[0]).toBe('entry');
    expect(pass.slice(-2)).toEqual(['entry', 'catch']);
    expect(pass.filter((kind) => staffOf(kind) === 'hands')).toHaveLength(7);
    expect(pass.filter((kind) => staffOf(kind) === 'feet')).toHaveLength(4);
    // M to begin, then a key each
    expect(1 + pass.length).toBeLessThanOrEqual(13);
    expect(pass.filter((kind) => kind === 'kick-top')).toHaveLength(2);
    expect(pass.filter((kind) => kind === 'kick-bottom')).toHaveLength(2);
  });

  it('asks for no hands where there are none', () => {
    expect(new Set(passFor({ stroke: 'dolphin-kick' }))).toEqual(new Set(['kick-top', 'kick-bottom']));
  });
});
