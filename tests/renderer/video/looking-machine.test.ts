import { describe, expect, it } from 'vitest';
import {
  afterLookingEvent,
  awaitedFrame,
  hasStopped,
  jumpedTo,
  justOpened,
  type Looking,
  type LookingEvent,
  mayTryAgain,
} from '../../../renderer/video/looking-machine';

const asked = (playhead: number, towards: -1 | 0 | 1, isHere = false): LookingEvent => ({
  kind: 'asked',
  walk: { playhead, towards },
  half: true,
  isHere,
});
const reached = (...events: readonly LookingEvent[]): Looking => events.reduce(afterLookingEvent, justOpened);
const stopped: LookingEvent = { kind: 'stopped' };

const events = {
  'asked, not here': asked(7, 0),
  'asked, here': asked(7, 0, true),
  answered: { kind: 'answered' },
  'tried-again': { kind: 'tried-again' },
  arrived: { kind: 'arrived', quietUntil: 40 },
  stopped,
  closed: { kind: 'closed' },
} satisfies Record<string, LookingEvent>;

const states: Record<Looking['kind'], Looking> = {
  opened: justOpened,
  waiting: reached(asked(5, 0)),
  'waiting-stopped': reached(asked(5, 0), stopped),
  moving: reached(asked(5, 0, true)),
  stopped: reached(asked(5, 0, true), stopped),
  closed: reached({ kind: 'closed' }),
};

/** For every event: the state after it, from opened, waiting, waiting-stopped, moving, stopped and closed. */
const table: Record<keyof typeof events, readonly Looking['kind'][]> = {
  'asked, not here': ['waiting', 'waiting', 'waiting', 'waiting', 'waiting', 'closed'],
  'asked, here': ['moving', 'moving', 'moving', 'moving', 'moving', 'closed'],
  answered: ['opened', 'moving', 'stopped', 'moving', 'stopped', 'closed'],
  'tried-again': ['opened', 'waiting', 'waiting-stopped', 'moving', 'stopped', 'closed'],
  arrived: ['opened', 'waiting', 'waiting-stopped', 'moving', 'stopped', 'closed'],
  stopped: ['opened', 'waiting-stopped', 'waiting-stopped', 'stopped', 'stopped', 'closed'],
  closed: ['closed', 'closed', 'closed', 'closed', 'closed', 'closed'],
};

describe('the states of looking at a film', () => {
  it('are these six, and every event leads from each to one of them', () => {
    for (const [name, kinds] of Object.entries(table))
      expect(
        Object.values(states).map(
          (state) => afterLookingEvent(state, events[name as keyof typeof events]).kind,
        ),
        name,
      ).toEqual(kinds);
  });

  it('tell which frame is waited for, and whether after a jump', () => {
    expect(Object.values(states).map(awaitedFrame)).toEqual([null, 5, 5, null, null, null]);
    expect(jumpedTo(reached(asked(5, 0)))).toBe(5);
    expect(jumpedTo(reached(asked(5, 1)))).toBeNull();
    expect(Object.values(states).filter(hasStopped)).toEqual([states['waiting-stopped'], states.stopped]);
  });

  it('let a frame be decoded a second time once for each asking', () => {
    const again: LookingEvent = { kind: 'tried-again' };
    expect(mayTryAgain(reached(asked(5, 0)))).toBe(true);
    expect(mayTryAgain(reached(asked(5, 0), again))).toBe(false);
    expect(mayTryAgain(reached(asked(5, 0), again, stopped))).toBe(false);
    expect(mayTryAgain(reached(asked(5, 0), again, asked(5, 0)))).toBe(true);
    expect(mayTryAgain(states.moving)).toBe(false);
  });

  it('give the frames around a jump a pause, and those of a walk or a stop none', () => {
    const arrived: LookingEvent = { kind: 'arrived', quietUntil: 40 };
    expect(reached(asked(5, 0), arrived).quietUntil).toBe(40);
    expect(reached(asked(5, 1), arrived).quietUntil).toBe(0);
    expect(reached(asked(5, 0), stopped, arrived).quietUntil).toBe(0);
    // the pause goes on when another frame is asked for
    expect(reached(asked(5, 0), arrived, asked(9, 0)).quietUntil).toBe(40);
  });
});
