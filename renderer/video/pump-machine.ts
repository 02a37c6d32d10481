import type { RunPlace } from './decoding-plan';

/** One run of a decoder: it is fed from a key picture on, packet after packet. */
export interface PumpRun extends RunPlace {
  /** Counts runs, so that what is left of an earlier one is known. */
  readonly number: number;
  /** Every picture passes through the decoder, wanted or not. */
  readonly careful: boolean;
}

interface Common {
  /** Runs begun so far. */
  readonly runs: number;
  /** How often in a row the decoder failed without giving anything. */
  readonly strikes: number;
  /** The next run passes every picture through the decoder. */
  readonly careful: boolean;
}

/** Everything the pump knows of where its decoder stands. */
export type PumpState =
  /** No run: the next packet fed begins one. */
  | (Common & { readonly kind: 'idle' })
  | (Common & { readonly kind: 'running'; readonly run: PumpRun })
  /** The film ends here: every packet of the run was fed. */
  | (Common & { readonly kind: 'fed-out'; readonly run: PumpRun })
  | (Common & { readonly kind: 'closed' });

export type PumpEvent =
  /** `key`: the key picture it begins at (decoding order). */
  | { readonly kind: 'run-began'; readonly key: number }
  | { readonly kind: 'packet-taken' }
  | { readonly kind: 'packets-ended' }
  /** Nothing more is fed in this run; the decoder itself is fine. */
  | { readonly kind: 'run-ended' }
  /** A picture that somebody wanted came out. */
  | { readonly kind: 'picture-given' }
  /** The decoder failed, or refused a packet. */
  | { readonly kind: 'decoder-failed' }
  | { readonly kind: 'gave-up' }
  /** A picture did not come: begin again with another decoder and leave nothing out. */
  | { readonly kind: 'asked-again' }
  | { readonly kind: 'closed' };

export const idlePump: PumpState = { kind: 'idle', runs: 0, strikes: 0, careful: false };

/** The run in hand, null when there is none. */
export const runOf = (state: PumpState): PumpRun | null =>
  state.kind === 'running' || state.kind === 'fed-out' ? state.run : null;

/** The state after an event. Events that mean nothing in a state leave it as it is; nothing follows the closing. */
export function afterPumpEvent(state: PumpState, event: PumpEvent): PumpState {
  if (state.kind === 'closed') return state;
  const { runs, strikes, careful } = state;
  switch (event.kind) {
    case 'run-began': {
      const run: PumpRun = { start: event.key, next: event.key, number: runs + 1, careful };
      return { kind: 'running', run, runs: runs + 1, strikes, careful: false };
    }
    case 'packet-taken':
      return state.kind === 'running' ? { ...state, run: { ...state.run, next: state.run.next + 1 } } : state;
    case 'packets-ended':
      return state.kind === 'running' ? { ...state, kind: 'fed-out' } : state;
    case 'run-ended':
      return { kind: 'idle', runs, strikes, careful };
    case 'picture-given':
    case 'gave-up':
      return { ...state, strikes: 0 };
    case 'decoder-failed':
      return { kind: 'idle', runs, strikes: strikes + 1, careful };
    case 'asked-again':
      return { kind: 'idle', runs, strikes, careful: true };
    case 'closed':
      return { kind: 'closed', runs, strikes, careful };
  }
}

/** What there is to do next. */
export type PumpStep =
  /** Nothing until somebody asks. */
  | 'sleep'
  | 'feed'
  /** Let everything inside the decoder out; the run is over then, as a decoder needs a key picture after it. */
  | 'flush'
  /** Say that the goal can't be decoded. */
  | 'give-up'
  /** Begin at the goal's key picture, then feed. */
  | 'begin-run';

/** What the next step depends on beside the state. */
export interface PumpOutlook {
  /** There is a frame to decode. */
  readonly hasGoal: boolean;
  /** The run in hand gives that frame by being fed on. */
  readonly goalComes: boolean;
  /** A picture inside the decoder is needed before more are fed for other reasons. */
  readonly isStuck: boolean;
  /** Pictures are inside the decoder. */
  readonly isHolding: boolean;
  /** The next picture of the run is itself wanted. */
  readonly nextIsWanted: boolean;
}

/** A decoder that fails this often without giving anything can't decode the group of pictures. Our default. */
const mostStrikes = 2;

export function nextPumpStep(state: PumpState, outlook: PumpOutlook): PumpStep {
  const fedOut = state.kind === 'fed-out';
  if (!outlook.hasGoal) {
    if (!outlook.isStuck && !(fedOut && outlook.isHolding)) return 'sleep';
    return fedOut || !outlook.nextIsWanted ? 'flush' : 'feed';
  }
  if (state.strikes >= mostStrikes) return 'give-up';
  return state.kind === 'running' && outlook.goalComes ? 'feed' : 'begin-run';
}
