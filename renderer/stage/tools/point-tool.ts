import { placeLandmark } from '../../open-swim/posture-commands';
import { placeSceneEnd, placeStraightPoint, sceneWords } from '../../open-swim/scene-commands';
import { landmarkWords } from '#core/marks/mark-words';
import { emptyScene } from '#core/swim-file/swim-schema';
import { postureOn } from '../../open-swim/selectors';
import { nothingSelected } from '../../open-swim/view-store';
import { nearestLandmark, nearestSceneEnd, nearestStraightPoint } from '../nearest-mark';
import type { StageTool } from './stage-tool';

/** Picks up what is already there: landmarks of the shown frame ends of scene lines, and points of straight lines. */
export const pointTool: StageTool = {
  id: 'point',
  press(session, at, reach) {
    const { document, view } = session;
    const { shownFrame, showScene, bare } = view.getState();
    const swim = document.swim();
    const frame = shownFrame ?? -1;
    // what is not drawn can't be taken hold of
    const scene = showScene && !bare ? swim.scene : emptyScene;
    const landmark = bare ? null : nearestLandmark(postureOn(swim, frame), at, reach);
    if (landmark) {
      view.setState({ selection: { kind: 'landmark', frame, landmark } });
      document.begin(`move ${landmarkWords[landmark].toLowerCase()}`, frame);
      return true;
    }
    const end = nearestSceneEnd(scene, at, reach);
    if (end) {
      view.setState({ selection: { kind: 'scene', ...end } });
      document.begin(`move the ${sceneWords[end.item].toLowerCase()}`);
      return true;
    }
    const straight = nearestStraightPoint(scene, at, reach);
    if (straight) {
      view.setState({ selection: { kind: 'straight', ...straight } });
      document.begin('move a point of a straight line');
      return true;
    }
    view.setState({ selection: nothingSelected });
    return false;
  },
  drag({ document, view }, at) {
    const { selection } = view.getState();
    if (selection.kind === 'landmark')
      document.during(placeLandmark(selection.frame, selection.landmark, at));
    if (selection.kind === 'scene') document.during(placeSceneEnd(selection.item, selection.end, at));
    if (selection.kind === 'straight')
      document.during(placeStraightPoint(selection.line, selection.point, at));
  },
  release({ document }) {
    document.commit();
  },
};
