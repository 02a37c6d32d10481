import { describe, expect, it, vi } from 'vitest';
import { createNotices } from '../../../renderer/ui/notices';

/** A clock that is wound by hand. */
function handClock() {
  let waiting: { readonly at: number; readonly then: () => void }[] = [];
  let now = 0;
  return {
    after: (milliseconds: number, then: () => void) => {
      const entry = { at: now + milliseconds, then };
      waiting.push(entry);
      return () => {
        waiting = waiting.filter((each) => each !== entry);
      };
    },
    pass: (milliseconds: number) => {
      now += milliseconds;
      const due = waiting.filter((each) => each.at <= now);
      waiting = waiting.filter((each) => each.at > now);
      for (const each of due) each.then();
    },
  };
}

describe('notices', () => {
  it('go away by themselves, and stay longer where there is something to press', () => {
    const clock = handClock();
    const notices = createNotices(clock);
    notices.say('Saved');
    clock.pass(5_999);
    expect(notices.store.getState().notice?.words).toBe('Saved');
    clock.pass(1);
    expect(notices.store.getState().notice).toBeNull();
    notices.say('In the bin', { label: 'Undo', run: vi.fn() });
    clock.pass(11_000);
    expect(notices.store.getState().notice?.action?.label).toBe('Undo');
    clock.pass(1_000);
    expect(notices.store.getState().notice).toBeNull();
  });

  it('start their time anew when another is said', () => {
    const clock = handClock();
    const notices = createNotices(clock);
    notices.say('first');
    clock.pass(4_000);
    notices.say('second');
    clock.pass(4_000);
    expect(notices.store.getState().notice?.words).toBe('second');
  });

  it('stay while the coach is on them', () => {
    const clock = handClock();
    const notices = createNotices(clock);
    notices.say('Saved');
    notices.hold();
    clock.pass(60_000);
    expect(notices.store.getState().notice?.words).toBe('Saved');
    notices.release();
    clock.pass(6_000);
    expect(notices.store.getState().notice).toBeNull();
  });
});
