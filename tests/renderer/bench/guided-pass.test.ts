import { describe, expect, it } from 'vitest';
import { passFor } from '../../../renderer/bench/guided-pass';

describe('the guided pass', () => {
  it('goes from one hand entry to the next with two kicks between', () => {
    const pass = passFor({ stroke: 'butterfly' });
    expect(pass[0]).toBe('entry');
    expect(pass.at(-1)).toBe('entry');
    expect(pass.filter((kind) => kind === 'kick-top')).toHaveLength(2);
    expect(pass.filter((kind) => kind === 'kick-bottom')).toHaveLength(2);
  });

  it('asks for no hands where there are none', () => {
    expect(new Set(passFor({ stroke: 'dolphin-kick' }))).toEqual(new Set(['kick-top', 'kick-bottom']));
  });
});
