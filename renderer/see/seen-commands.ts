import type { SeenRun } from '#core/swim-file/swim-schema';
import { travelOfSeen } from '#core/see/seen-runs';
import type { SwimCommand } from '../open-swim/swim-command';
import { seeWords } from '#core/words/see';

/** Keeps what was seen in the place of what was seen before, and the way of travel where the coach has set none. One step. */
export function keepSeen(runs: readonly SeenRun[]): SwimCommand {
  return {
    name: seeWords('seeSwimmer2'),
    change: (draft) => {
      draft.seen = runs.map((run) => ({ ...run, points: [...run.points] }));
      draft.scene.travel ??= travelOfSeen(runs);
    },
  };
}

export function dropSeen(): SwimCommand {
  return {
    name: seeWords('forgetSeenPoints2'),
    change: (draft) => {
      draft.seen = [];
    },
  };
}
