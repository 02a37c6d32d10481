import { setScene } from '../open-swim/scene-commands';
import { useOpenSwim, useSwim, useView } from '../open-swim/open-swim';
import {
  endPoints,
  keepStraight,
  leastStraightPoints,
  planeCorners,
  takeBackPoint,
} from './tools/points-tool';
import { useTip } from '../ui/use-tip';

const corners = [
  'Corner 1 of 4: begin near the surface.',
  'Corner 2 of 4: along the pool from it.',
  'Corner 3 of 4: straight down from there.',
  'Corner 4 of 4: back under the first.',
] as const;

/** What the tools that take one point after the other ask for next. */
export function PointsPrompt() {
  const tip = useTip();
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
      : 'Drag a corner to mend it.'
    : enough
      ? 'More points make it surer; keep the line when it is done.'
      : 'Click along something straight in the pool: an edge of the floor line, a taut rope.';
  return (
    <output className="stage-prompt">
      <strong>{words}</strong>
      {!isPlane && (
        <span>
          Three points or more, from end to end.{' '}
          {straights.length === 0
            ? 'Lines near the edge of the picture show the bend best.'
            : `${straights.length} kept.`}
        </span>
      )}
      {points.length > 0 && (
        <button
          type="button"
          onClick={() => takeBackPoint(session)}
          title={tip('point-back', 'Take back the last point')}
        >
          Back <kbd>⌫</kbd>
        </button>
      )}
      {!isPlane && enough && (
        <button
          type="button"
          onClick={() => keepStraight(session)}
          title={tip('scene-straight', 'Keep this line and begin another')}
        >
          Keep the line <kbd>5</kbd>
        </button>
      )}
      {!isPlane && points.length === 0 && straights.length > 0 && (
        <button
          type="button"
          onClick={() => session.document.run(setScene('straights', straights.slice(0, -1)))}
          title="Take away the line that was kept last"
        >
          Remove last
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
          Remove the rectangle
        </button>
      )}
      <button type="button" onClick={() => endPoints(session)} title={tip('put-away', 'Stop')}>
        Stop <kbd>Esc</kbd>
      </button>
    </output>
  );
}
