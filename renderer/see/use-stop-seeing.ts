import { useEffect } from 'react';
import { useBench } from '../bench/bench-session';
import { cancelSeeing } from './see-actions';

/** Who leaves the bench wants nothing more seen on it. */
export function useStopSeeing(): void {
  const session = useBench();
  useEffect(() => () => cancelSeeing(session), [session]);
}
