import { laidLineOps } from '#core/drawing/body-line-ops';
import { movedPosture } from '#core/drawing/shown-line';
import type { Posture } from '#core/swim-file/swim-schema';
import { type StageView, toStage } from '../open-swim/stage-view';
import { stageUnit } from '../stage/body-line-drawing';
import { Painted } from '../stage/painted';

/** The other swim's body line laid on this one: dashed and named, so that it is never taken for this swim's own. */
export function LaidLineDrawing({ posture, view }: { readonly posture: Posture; readonly view: StageView }) {
  const placed = movedPosture(posture, (point) => toStage(view, point));
  return <Painted drawing={laidLineOps(placed, stageUnit, 'B')} />;
}
