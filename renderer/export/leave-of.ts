import { type LeaveToShow, leaveToShow } from '#core/consent/leave-to-show';
import type { OpenSwim } from '../open-swim/open-swim';

/** Whether pictures of these opened swims may be saved without asking; a swim opened twice counts once. */
export function leaveOf(sessions: readonly OpenSwim[]): LeaveToShow {
  return leaveToShow(
    sessions.map(({ document, known }) => ({
      card: document.swim().card,
      swimmer: known.getState().swimmer,
    })),
  );
}
