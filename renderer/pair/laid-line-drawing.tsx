import { Group, Line } from 'react-konva';
import { bodyChain } from '#core/marks/landmark';
import type { Posture } from '#core/swim-file/swim-schema';
import { CasedLabel } from '../stage/cased-label';
import { casing, partColour } from '#core/drawing/landmark-look';
import { type StageView, toStage } from '../open-swim/stage-view';

/** The other swim's body line laid on this one: dashed and named, so that it is never taken for this swim's own. */
export function LaidLineDrawing({ posture, view }: { readonly posture: Posture; readonly view: StageView }) {
  const line = bodyChain.flatMap((name) => {
    const point = posture.points[name];
    return point ? [toStage(view, point)] : [];
  });
  const points = line.flatMap(({ x, y }) => [x, y]);
  const end = line.at(-1);
  return (
    <Group listening={false}>
      <Line
        points={points}
        stroke={casing}
        strokeWidth={6.5}
        opacity={0.7}
        lineCap="round"
        lineJoin="round"
      />
      <Line
        points={points}
        stroke={partColour.hands}
        strokeWidth={2.6}
        dash={[9, 6]}
        lineCap="butt"
        lineJoin="round"
      />
      {end && <CasedLabel x={end.x} y={end.y + 18} words="B" colour={partColour.hands} side="centre" />}
    </Group>
  );
}
