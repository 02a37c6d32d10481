import { useStore } from 'zustand';
import { useBench, useSwim } from '../bench/bench-session';
import { cameraUnlooked, lookAtCamera, sayItStood, stopLooking } from './look-at-camera';

/** Says at the head of the readings that nobody has looked whether the camera moved, and offers to. */
export function CameraNotice() {
  const session = useBench();
  const unlooked = useSwim(cameraUnlooked);
  const camera = useStore(session.follow, (state) => state.camera);
  const hasFilm = useStore(session.film, (state) => state.source !== null);
  if (!unlooked) return null;
  if (camera?.state === 'looking')
    return (
      <div className="view-notice camera-notice" role="status">
        <p>Looking whether the camera moved: {Math.round(100 * camera.share)} %</p>
        <button type="button" onClick={() => stopLooking(session)}>
          Stop
        </button>
      </div>
    );
  return (
    <div className="view-notice camera-notice">
      <p>
        {camera?.state === 'unclear'
          ? 'Too little can be seen behind the swimmer to tell whether the camera moved. Speed, distance and heights are read as if it had stood.'
          : 'Nobody has looked whether the camera moved: speed, distance and heights are read as if it had stood.'}
      </p>
      <span className="camera-notice-row">
        <button type="button" disabled={!hasFilm} onClick={() => void lookAtCamera(session)}>
          {camera?.state === 'unclear' ? 'Look again' : 'Look'}
        </button>
        <button type="button" onClick={() => sayItStood(session)}>
          It stood still
        </button>
      </span>
    </div>
  );
}
