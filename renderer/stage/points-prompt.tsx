import { keyCap } from '../ui/key-cap';
import { setScene } from '../open-swim/scene-commands';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import {
  endPoints,
  keepStraight,
  leastStraightPoints,
  planeCorners,
  takeBackPoint,
} from './tools/points-tool';
import { useKeyOf, useTip } from '../ui/use-tip';
import { stageWords } from '#core/words/stage';
import { rich } from '../ui/rich';

const corners = [
  stageWords('corner14Begin'),
  stageWords('corner24Along'),
  stageWords('corner34Straight'),
  stageWords('corner44Back'),
] as const;

/** What the tools that take one point after the other ask for next. */
export function PointsPrompt() {
  const tip = useTip();
  const keyOf = useKeyOf();
  const session = useOpenSwim();
  const tool = useView((state) => state.tool);
  const points = useView((state) => state.draftPoints);
  const plane = useSwim((swim) => swim.scene.plane);
  const straights = useSwim((swim) => swim.scene.straights);
  const isPlane = tool === 'plane';
  const enough = points.length >= leastStraightPoints;
  const words = isPlane
    ? points.length < planeCorners
      ? corners[points.length]
      : stageWords('dragCornerMend')
    : enough
      ? stageWords('morePointsMake')
      : stageWords('clickAlongSomething');
  return (
    <output className="stage-prompt">
      <strong>{words}</strong>
      {!isPlane && (
        <span>
          {straights.length === 0
            ? stageWords('threePointsOr')
            : stageWords('threePointsOrMore', { straights: straights.length })}
        </span>
      )}
      {points.length > 0 && (
        <button
          type="button"
          onClick={() => takeBackPoint(session)}
          title={tip('point-back', stageWords('takeBackLast'))}
        >
          {rich(stageWords.parts('back', { key: keyOf('point-back'), kbd: keyCap }))}
        </button>
      )}
      {!isPlane && enough && (
        <button
          type="button"
          onClick={() => keepStraight(session)}
          title={tip('scene-straight', stageWords('keepLineBegin'))}
        >
          {rich(stageWords.parts('keepLine5', { key: keyOf('scene-straight'), kbd: keyCap }))}
        </button>
      )}
      {!isPlane && points.length === 0 && straights.length > 0 && (
        <button
          type="button"
          onClick={() => session.document.run(setScene('straights', straights.slice(0, -1)))}
          title={stageWords('takeAwayLine')}
        >
          {stageWords('removeLast')}
        </button>
      )}
      {isPlane && plane && (
        <button
          type="button"
          onClick={() => {
            session.document.run(setScene('plane', null));
            endPoints(session);
          }}
        >
          {stageWords('removeRectangle')}
        </button>
      )}
      <button type="button" onClick={() => endPoints(session)} title={tip('put-away', stageWords('stop'))}>
        {rich(stageWords.parts('stopEsc', { key: keyOf('put-away'), kbd: keyCap }))}
      </button>
    </output>
  );
}
