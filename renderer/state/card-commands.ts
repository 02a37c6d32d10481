import type { Clip, SwimCard } from '#core/swim-file/swim-schema';
import type { SwimCommand } from './swim-command';

export function editCard(said: Partial<SwimCard>): SwimCommand {
  return {
    name: 'edit the swim card',
    change: (draft) => {
      Object.assign(draft.card, structuredClone(said));
    },
  };
}

/** Playback seconds per real second; the coach's word outranks what the file says. */
export function setSlowdown(factor: number, source: Clip['slowdown']['source'] = 'coach'): SwimCommand {
  return {
    name: 'set the slow motion',
    change: (draft) => {
      draft.clip.slowdown = { factor, source };
    },
  };
}
