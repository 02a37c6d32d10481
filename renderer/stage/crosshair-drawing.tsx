import { Group, Line } from 'react-konva';
import type { Point } from '#core/units/point';
import { casing } from '#core/drawing/landmark-look';
import { type StageView, toStage } from '../open-swim/stage-view';

/** The keyboard's own pointer. */
export function CrosshairDrawing({ at, view }: { readonly at: Point; readonly view: StageView }) {
  const { x, y } = toStage(view, at);
  const arms = [
    [-22, 0, -5, 0],
    [5, 0, 22, 0],
    [0, -22, 0, -5],
    [0, 5, 0, 22],
  ];
  return (
    <Group x={x} y={y} listening={false}>
      {arms.map((points) => (
        <Line key={`c${points.join()}`} points={points} stroke={casing} strokeWidth={5} lineCap="round" />
      ))}
      {arms.map((points) => (
        <Line key={points.join()} points={points} stroke="#ffffff" strokeWidth={2} lineCap="round" />
      ))}
    </Group>
  );
}
