import { useEffect } from 'react';
import { useOpenSwim } from '../open-swim/open-swim';
import { cancelSeeing } from './see-actions';

/** Who leaves the bench wants nothing more seen on it. */
export function useStopSeeing(): void {
  const session = useOpenSwim();
  useEffect(() => () => cancelSeeing(session), [session]);
}
