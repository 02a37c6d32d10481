import { describe, expect, it } from 'vitest';
import {
  afterPumpEvent,
  idlePump,
  nextPumpStep,
  type PumpEvent,
  type PumpOutlook,
  type PumpState,
  type PumpStep,
} from '../../../renderer/video/pump-machine';

const reached = (state: PumpState, ...events: readonly PumpEvent[]): PumpState =>
  events.reduce(afterPumpEvent, state);
const began: PumpEvent = { kind: 'run-began', key: 12 };

const states: Record<PumpState['kind'], PumpState> = {
  idle: idlePump,
  running: reached(idlePump, began),
  'fed-out': reached(idlePump, began, { kind: 'packets-ended' }),
  closed: reached(idlePump, { kind: 'closed' }),
};

/** For every event: the state after it, from idle, running, fed-out and closed. */
const table: Record<PumpEvent['kind'], readonly PumpState['kind'][]> = {
  'run-began': ['running', 'running', 'running', 'closed'],
  'packet-taken': ['idle', 'running', 'fed-out', 'closed'],
  'packets-ended': ['idle', 'fed-out', 'fed-out', 'closed'],
  'run-ended': ['idle', 'idle', 'idle', 'closed'],
  'picture-given': ['idle', 'running', 'fed-out', 'closed'],
  'decoder-failed': ['idle', 'idle', 'idle', 'closed'],
  'gave-up': ['idle', 'running', 'fed-out', 'closed'],
  'asked-again': ['idle', 'idle', 'idle', 'closed'],
  closed: ['closed', 'closed', 'closed', 'closed'],
};

describe('the states of a decoder pump', () => {
  it('are these four, and every event leads from each to one of them', () => {
    for (const [kind, kinds] of Object.entries(table)) {
      const event = (kind === 'run-began' ? began : { kind }) as PumpEvent;
      expect(
        Object.values(states).map((state) => afterPumpEvent(state, event).kind),
        kind,
      ).toEqual(kinds);
    }
  });

  it('count packets from the run’s key picture, and runs from one', () => {
    const fed = reached(idlePump, began, { kind: 'packet-taken' }, { kind: 'packet-taken' });
    expect(fed).toMatchObject({ run: { start: 12, next: 14, number: 1 } });
    expect(reached(fed, { kind: 'run-began', key: 0 })).toMatchObject({
      run: { start: 0, next: 0, number: 2 },
    });
  });

  it('pass every picture through the decoder for one run after a picture did not come', () => {
    const again = reached(states.running, { kind: 'asked-again' }, began);
    expect(again).toMatchObject({ run: { careful: true } });
    expect(reached(again, began)).toMatchObject({ run: { careful: false } });
  });
});

const outlook: PumpOutlook = {
  hasGoal: false,
  goalComes: false,
  isStuck: false,
  isHolding: false,
  nextIsWanted: false,
};
const steps = (of: Partial<PumpOutlook>): readonly PumpStep[] =>
  [states.idle, states.running, states['fed-out']].map((state) => nextPumpStep(state, { ...outlook, ...of }));

describe('what a pump does next, idle, running and fed out', () => {
  it.each<readonly [string, Partial<PumpOutlook>, readonly PumpStep[]]>([
    ['nothing to do', {}, ['sleep', 'sleep', 'sleep']],
    ['pictures inside that nobody needs now', { isHolding: true }, ['sleep', 'sleep', 'flush']],
    [
      'a picture inside is needed, and what comes next is not',
      { isStuck: true, isHolding: true },
      ['flush', 'flush', 'flush'],
    ],
    [
      'a picture inside is needed, and what comes next is wanted too',
      { isStuck: true, isHolding: true, nextIsWanted: true },
      ['feed', 'feed', 'flush'],
    ],
    [
      'a frame is to be decoded that the run does not give',
      { hasGoal: true },
      ['begin-run', 'begin-run', 'begin-run'],
    ],
    [
      'a frame is to be decoded that the run gives',
      { hasGoal: true, goalComes: true },
      ['begin-run', 'feed', 'begin-run'],
    ],
  ])('%s', (_, of, expected) => {
    expect(steps(of)).toEqual(expected);
  });

  it('gives up after two failures in a row, and not when a picture came between them', () => {
    const failed: PumpEvent = { kind: 'decoder-failed' };
    const asks = { ...outlook, hasGoal: true };
    const twice = reached(idlePump, began, failed, began, failed);
    expect(nextPumpStep(twice, asks)).toBe('give-up');
    expect(nextPumpStep(reached(twice, { kind: 'gave-up' }), asks)).toBe('begin-run');
    const once = reached(idlePump, began, failed, began, { kind: 'picture-given' }, failed);
    expect(nextPumpStep(once, asks)).toBe('begin-run');
  });
});
