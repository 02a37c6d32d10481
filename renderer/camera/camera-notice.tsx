import { useStore } from 'zustand';
import { cameraPath } from '#core/follow/camera-path';
import type { Swim } from '#core/swim-file/swim-schema';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { cameraUnlooked, lookAtCamera, sayItStood, stopLooking } from './look-at-camera';
import { cameraWords } from '#core/words/camera';

/** What a camera that was found to have moved leaves unread; null where nothing is. The coach, who was there, decides. */
function foundMoving(swim: Swim): string | null {
  if (swim.card.view !== 'side') return null;
  switch (cameraPath(swim, 0).state) {
    case 'loose':
      return cameraWords('cameraSeemsHave');
    case 'turned':
      return cameraWords('cameraSeemsHaveTurned');
    case 'stands':
    case 'carried':
      return null;
  }
}

/**
 * Says at the head of the readings that nobody has looked whether the camera moved, and offers to; or that it was found to
 * have moved, which the coach can overrule.
 */
export function CameraNotice() {
  const session = useOpenSwim();
  const unlooked = useSwim(cameraUnlooked);
  const camera = useStore(session.follow, (state) => state.camera);
  const hasFilm = useStore(session.film, (state) => state.source !== null);
  const moving = useSwim(foundMoving);
  if (!unlooked && moving !== null)
    return (
      <div className="view-notice camera-notice">
        <p>{moving}</p>
        <span className="camera-notice-row">
          <button type="button" onClick={() => sayItStood(session)}>
            {cameraWords('stoodStill')}
          </button>
        </span>
      </div>
    );
  if (!unlooked) return null;
  if (camera?.state === 'looking')
    return (
      <div className="view-notice camera-notice" role="status">
        <p>{cameraWords('lookingWhetherCamera', { share: Math.round(100 * camera.share) })}</p>
        <button type="button" onClick={() => stopLooking(session)}>
          {cameraWords('stop')}
        </button>
      </div>
    );
  return (
    <div className="view-notice camera-notice">
      <p>{camera?.state === 'unclear' ? cameraWords('tooLittleCan') : cameraWords('nobodyHasLooked')}</p>
      <span className="camera-notice-row">
        <button type="button" disabled={!hasFilm} onClick={() => void lookAtCamera(session)}>
          {camera?.state === 'unclear' ? cameraWords('lookAgain') : cameraWords('look')}
        </button>
        <button type="button" onClick={() => sayItStood(session)}>
          {cameraWords('stoodStill')}
        </button>
      </span>
    </div>
  );
}
