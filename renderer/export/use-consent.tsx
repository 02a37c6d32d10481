import { type ReactNode, useCallback, useEffect, useState } from 'react';
import type { LeaveToShow } from '#core/consent/leave-to-show';
import type { OpenSwim } from '../open-swim/open-swim';
import { ConsentQuestion } from './consent-question';
import { leaveOf } from './leave-of';

export interface ConsentAsked {
  /** Whether pictures of these swims may be saved now: consent is on record, or the coach holds it this once. */
  readonly mayShow: boolean;
  /** What must be asked before, or what was just recorded; nothing where nothing need be asked. */
  readonly question: ReactNode;
  /** Call it when something was saved: "just this once" is asked again the next time. */
  readonly used: () => void;
}

/** Consent to show the swimmers of these opened swims. Every place that saves pictures asks here. */
export function useConsent(sessions: readonly OpenSwim[]): ConsentAsked {
  const [leave, setLeave] = useState<LeaveToShow>(() => leaveOf(sessions));
  const [once, setOnce] = useState(false);
  useEffect(() => {
    const look = (): void => setLeave(leaveOf(sessions));
    look();
    const stops = sessions.flatMap(({ known, document }) => [
      known.subscribe(look),
      document.store.subscribe(look),
    ]);
    return () => {
      for (const stop of stops) stop();
    };
  }, [sessions]);
  return {
    mayShow: leave.kind === 'recorded' || once,
    question: <ConsentQuestion leave={leave} sessions={sessions} once={once} onOnce={setOnce} />,
    used: useCallback(() => setOnce(false), []),
  };
}
