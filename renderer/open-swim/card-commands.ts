import type { Clip, SwimCard } from '#core/swim-file/swim-schema';
import type { SwimCommand } from './swim-command';
import { openSwimWords } from '#core/words/open-swim';

export function editCard(said: Partial<SwimCard>): SwimCommand {
  return {
    name: openSwimWords('editSwimCard'),
    change: (draft) => {
      Object.assign(draft.card, structuredClone(said));
    },
  };
}

/** The card and the slow motion as one step, as the coach kept them together. */
export function keepCard(said: Partial<SwimCard>, slowdown: number | null): SwimCommand {
  const steps = [editCard(said), ...(slowdown === null ? [] : [setSlowdown(slowdown)])];
  return {
    name: openSwimWords('editSwimCard'),
    change: (draft) => {
      for (const step of steps) step.change(draft);
    },
  };
}

/** Playback seconds per real second; the coach's word outranks what the file says. */
export function setSlowdown(factor: number, source: Clip['slowdown']['source'] = 'coach'): SwimCommand {
  return {
    name: openSwimWords('setSlowMotion'),
    change: (draft) => {
      draft.clip.slowdown = { factor, source };
    },
  };
}
