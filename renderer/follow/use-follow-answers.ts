import { useEffect } from 'react';
import { useOpenSwim } from '../open-swim/open-swim';
import { cancelFollowing, hearAnswer } from './follow-actions';

/** While the bench is open: an answered question is followed up; leaving the bench ends what is under way. */
export function useFollowAnswers(): void {
  const session = useOpenSwim();
  useEffect(() => {
    const unsubscribe = session.document.store.subscribe((state, before) => {
      if (state.swim !== before.swim && !state.inGesture) void hearAnswer(session);
    });
    return () => {
      unsubscribe();
      cancelFollowing(session);
    };
  }, [session]);
}
