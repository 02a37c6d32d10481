import { describe, expect, it } from 'vitest';
import { createStopwatches } from '../../../renderer/sets/stopwatches';

describe('stopwatches', () => {
  it('run side by side and stop each at its own time, to the tenth', () => {
    let now = 1000;
    const watches = createStopwatches(() => now);
    watches.start('pip');
    now = 3000;
    watches.start('juno');
    now = 20_449;
    expect(watches.stop('pip')).toBe(19.4);
    expect(watches.read('juno')).toBeCloseTo(17.449, 9);
    expect(watches.stop('pip')).toBeNull();
    watches.clear();
    expect(watches.read('juno')).toBeNull();
  });
});
