import type { OpenSwim } from '../../open-swim/open-swim';
import { layNextAt } from './body-line-tool';
import { addPointAt } from './points-tool';
import { placeLineEndAt } from './line-tool';
import { placeStillAt } from './still-tool';

/** Enter: brings up the keyboard's own pointer, or places at it what the tool asks for. */
export function enterAtCrosshair(session: OpenSwim): void {
  const { crosshair, pointer, tool, nextLandmark } = session.view.getState();
  if (tool === 'point' || tool === 'look' || (tool === 'body-line' && !nextLandmark)) return;
  if (!crosshair) {
    const { width, height } = session.document.swim().clip;
    session.view.setState({ crosshair: pointer ?? { x: width / 2, y: height / 2 } });
    return;
  }
  if (tool === 'body-line') layNextAt(session, crosshair);
  else if (tool === 'plane' || tool === 'straight') addPointAt(session, crosshair);
  else if (tool === 'still') placeStillAt(session, crosshair);
  else placeLineEndAt(session, crosshair);
}
