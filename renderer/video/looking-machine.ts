import type { Walk } from './decoding-plan';

interface Common {
  /** Where the coach is, and which way they go. */
  readonly walk: Walk;
  /** Half size will do for what is held. */
  readonly half: boolean;
  /** After a jump, the frames around it wait until this time (milliseconds of the page's clock). */
  readonly quietUntil: number;
}

/** What whoever looks at the film is doing, as far as it decides what to decode. */
export type Looking =
  /** Nobody has asked for a frame yet; the first ones are decoded meanwhile. */
  | (Common & { readonly kind: 'opened' })
  /** The frame asked for is not here yet. */
  | (Common & { readonly kind: 'waiting'; readonly triedAgain: boolean })
  /** It is not here yet, and nothing else has been asked for since. */
  | (Common & { readonly kind: 'waiting-stopped'; readonly triedAgain: boolean })
  /** The frame asked for was given, or can't be; the next may be asked for at any moment. */
  | (Common & { readonly kind: 'moving' })
  /** Nothing has been asked for lately: there is time for full resolution, and for what is around. */
  | (Common & { readonly kind: 'stopped' })
  | (Common & { readonly kind: 'closed' });

export type LookingEvent =
  | { readonly kind: 'asked'; readonly walk: Walk; readonly half: boolean; readonly isHere: boolean }
  /** The frame waited for was given, or its loss was told. */
  | { readonly kind: 'answered' }
  /** It is decoded a second time, from its group's start. */
  | { readonly kind: 'tried-again' }
  /** The picture of a jump is here; what is around it waits until then. */
  | { readonly kind: 'arrived'; readonly quietUntil: number }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'closed' };

export const justOpened: Looking = {
  kind: 'opened',
  walk: { playhead: 0, towards: 0 },
  half: false,
  quietUntil: 0,
};

/** The frame waited for, null when there is none. */
export const awaitedFrame = (looking: Looking): number | null =>
  looking.kind === 'waiting' || looking.kind === 'waiting-stopped' ? looking.walk.playhead : null;

/** The frame waited for after a jump, null when there is none: others are not worth finishing meanwhile. */
export const jumpedTo = (looking: Looking): number | null =>
  looking.walk.towards === 0 ? awaitedFrame(looking) : null;

/** A frame waited for can be decoded once more. */
export const mayTryAgain = (looking: Looking): boolean =>
  (looking.kind === 'waiting' || looking.kind === 'waiting-stopped') && !looking.triedAgain;

/** Nothing has been asked for lately. */
export const hasStopped = ({ kind }: Looking): boolean => kind === 'stopped' || kind === 'waiting-stopped';

/** The state after an event. Events that mean nothing in a state leave it as it is; nothing follows the closing. */
export function afterLookingEvent(looking: Looking, event: LookingEvent): Looking {
  if (looking.kind === 'closed') return looking;
  const { walk, half, quietUntil } = looking;
  switch (event.kind) {
    case 'asked': {
      const common: Common = { walk: event.walk, half: event.half, quietUntil };
      return event.isHere ? { ...common, kind: 'moving' } : { ...common, kind: 'waiting', triedAgain: false };
    }
    case 'answered':
      if (looking.kind === 'waiting') return { kind: 'moving', walk, half, quietUntil };
      return looking.kind === 'waiting-stopped' ? { kind: 'stopped', walk, half, quietUntil } : looking;
    case 'tried-again':
      return looking.kind === 'waiting' || looking.kind === 'waiting-stopped'
        ? { ...looking, triedAgain: true }
        : looking;
    case 'arrived':
      return walk.towards === 0 && !hasStopped(looking)
        ? { ...looking, quietUntil: event.quietUntil }
        : looking;
    case 'stopped':
      if (looking.kind === 'waiting') return { ...looking, kind: 'waiting-stopped' };
      return looking.kind === 'moving' ? { ...looking, kind: 'stopped' } : looking;
    case 'closed':
      return { kind: 'closed', walk, half, quietUntil };
  }
}
