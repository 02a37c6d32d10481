import { curveMonotoneX, line } from 'd3-shape';
import { memo, useMemo } from 'react';
import { useSwim } from '../open-swim/open-swim';
import { clockOf } from '../open-swim/open-swim';
import { withFollowed } from '#core/follow/with-followed';
import { withSeen } from '#core/see/with-seen';
import { shownPoints, type TracePoint, traceRuns } from './body-traces';
import type { ScoreAxis } from '../open-swim/score-axis';
import type { ScoreLayout } from './score-layout';

/** Height of fingertip and toe where body lines are dense: the wave itself, behind the marks. */
export const ScoreTraces = memo(function ScoreTraces(props: {
  readonly axis: ScoreAxis;
  readonly layout: ScoreLayout;
}) {
  const { axis, layout } = props;
  const postures = useSwim((swim) => swim.postures);
  const followed = useSwim((swim) => swim.followed);
  const seen = useSwim((swim) => swim.seen);
  const clock = useSwim(clockOf);
  const traces = useMemo(
    () =>
      (
        [
          ['fingertip', 'hands'],
          ['toe', 'feet'],
          ['ear', 'head'],
        ] as const
      ).map(([landmark, staff]) => ({
        staff,
        // a broken line where the machine followed or saw, a whole one where the coach marked
        guessed: [...followed, ...seen].some((run) => run.landmark === landmark),
        runs: traceRuns(
          withSeen(withFollowed(postures, followed, landmark), seen, landmark),
          landmark,
          clock,
        ),
      })),
    [postures, followed, seen, clock],
  );
  return (
    <g className="score-traces">
      {traces.flatMap(({ staff, runs, guessed }) =>
        runs.map((run) => {
          const band = layout.staffs[staff];
          const path = line<TracePoint>()
            .x((point) => point.x)
            .y((point) => band.top + band.height * (0.15 + 0.7 * point.share))
            .curve(curveMonotoneX);
          return (
            <path
              key={`${staff}${run.points[0]?.time ?? 0}`}
              d={path([...shownPoints(run, axis.toX, axis.left, axis.right)]) ?? ''}
              fill="none"
              stroke={`var(--${staff})`}
              className={guessed ? 'trace followed' : 'trace'}
            />
          );
        }),
      )}
    </g>
  );
});
