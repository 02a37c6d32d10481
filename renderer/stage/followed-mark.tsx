import { Circle, Group, Rect, RegularPolygon } from 'react-konva';
import { bodyPartOf, casing, partColour, partShape } from '#core/drawing/landmark-look';
import type { LandmarkName } from '#core/marks/landmark';

interface Props {
  readonly landmark: LandmarkName;
  readonly x: number;
  readonly y: number;
  /** Share of its full size, as a small swimmer has smaller marks. */
  readonly share: number;
  /** Its edge is broken. */
  readonly unsure: boolean;
}

/** A followed landmark on the stage: the part of the body by shape and colour, hollow, never to be taken for the coach's. */
export function FollowedMark({ landmark, x, y, share, unsure }: Props) {
  const part = bodyPartOf(landmark);
  const shape = partShape[part];
  const look = {
    stroke: partColour[part],
    strokeWidth: 2.5,
    shadowColor: casing,
    shadowBlur: 3,
    shadowOpacity: 1,
    listening: false,
    ...(unsure ? { dash: [3, 3] } : {}),
  };
  return (
    <Group x={x} y={y} scaleX={share} scaleY={share} listening={false}>
      {shape === 'circle' && <Circle radius={5.5} {...look} />}
      {shape === 'square' && <Rect x={-5} y={-5} width={10} height={10} {...look} />}
      {shape === 'diamond' && <Rect x={0} y={-7} width={9.9} height={9.9} rotation={45} {...look} />}
      {shape === 'triangle' && <RegularPolygon sides={3} radius={7.5} {...look} />}
    </Group>
  );
}
