import { Group, Line } from 'react-konva';
import { casing } from '#core/drawing/landmark-look';
import type { Scene } from '#core/swim-file/swim-schema';
import { CasedLabel } from './cased-label';
import { type StageView, toStage } from '../open-swim/stage-view';
import { stageWords } from '#core/words/stage';

const reach = 11;
/** A cross with a gap at its middle, so that what is marked can be seen. */
const strokes = [
  [-reach, 0, -3, 0],
  [3, 0, reach, 0],
  [0, -reach, 0, -3],
  [0, 3, 0, reach],
] as const;

/** Things that stand still in the pool, where they are marked on this frame. */
export function StillDrawing({
  still,
  frame,
  view,
}: {
  readonly still: Scene['still'];
  readonly frame: number;
  readonly view: StageView;
}) {
  return (
    <Group listening={false}>
      {still.map((thing, index) => {
        const mark = thing.find((each) => each.frame === frame);
        if (!mark) return null;
        const { x, y } = toStage(view, mark);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a thing has no other name than its place
          <Group key={index}>
            {strokes.map((points) => (
              <Group key={points.join(' ')} x={x} y={y}>
                <Line points={[...points]} stroke={casing} strokeWidth={6} opacity={0.6} />
                <Line points={[...points]} stroke="#ffffff" strokeWidth={2.5} />
              </Group>
            ))}
            <CasedLabel x={x + 4} y={y - 18} words={stageWords('still', { index: index + 1 })} />
          </Group>
        );
      })}
    </Group>
  );
}
