import { type LeaveToShow, leaveToShow } from '#core/consent/leave-to-show';
import type { BenchSession } from '../bench/bench-session';

/** Whether pictures of these opened swims may be saved without asking; a swim opened twice counts once. */
export function leaveOf(sessions: readonly BenchSession[]): LeaveToShow {
  return leaveToShow(
    sessions.map(({ document, known }) => ({
      card: document.swim().card,
      swimmer: known.getState().swimmer,
    })),
  );
}
