import { useEffect } from 'react';
import { useBench } from '../bench/bench-session';
import { cancelFollowing, hearAnswer } from './follow-actions';

/** While the bench is open: an answered question is followed up; leaving the bench ends what is under way. */
export function useFollowAnswers(): void {
  const session = useBench();
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
