import { useEffect } from 'react';
import { useOpenSwim } from '../open-swim/open-swim';
import { cameraUnlooked, lookAtCamera, stopLooking } from './look-at-camera';

/** Marking has paused for this long before the camera is looked at, milliseconds: stepping goes first. Our choice. */
const quiet = 2500;

/**
 * While the bench is open: once a coach has laid lines between which nobody has looked whether the camera moved, that is done by
 * itself. A swim that is only looked at is left as it is.
 */
export function useCameraLook(): void {
  const session = useOpenSwim();
  useEffect(() => {
    const { document, follow, film } = session;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const later = (): void => {
      clearTimeout(timer);
      timer = setTimeout(() => {
        const { share, camera } = follow.getState();
        if (document.store.getState().inGesture || share !== null || camera?.state === 'looking') later();
        else if (camera === null && film.getState().reopen && cameraUnlooked(document.swim()))
          void lookAtCamera(session);
      }, quiet);
    };
    const unsubscribe = document.store.subscribe(({ swim }, before) => {
      if (swim.postures === before.swim.postures && swim.cameraPath === before.swim.cameraPath) return;
      if (follow.getState().camera?.state === 'unclear') follow.setState({ camera: null });
      if (cameraUnlooked(swim)) later();
    });
    return () => {
      unsubscribe();
      clearTimeout(timer);
      stopLooking(session);
    };
  }, [session]);
}
