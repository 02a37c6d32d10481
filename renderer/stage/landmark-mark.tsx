import { Circle, Group, Rect, RegularPolygon } from 'react-konva';
import type { LandmarkName } from '#core/marks/landmark';
import { bodyPartOf, casing, partColour, partShape } from '#core/drawing/landmark-look';

interface Props {
  readonly landmark: LandmarkName;
  readonly x: number;
  readonly y: number;
  readonly selected: boolean;
  /** Share of its full size, as a small swimmer has smaller marks. */
  readonly share: number;
  readonly faint?: boolean;
  /** Followed points are hollow; unsure ones have a broken edge besides. */
  readonly look?: 'marked' | 'followed' | 'unsure';
}

/** A landmark on the stage: the part of the body by shape and colour, on a dark edge. */
export function LandmarkMark({ landmark, x, y, selected, share, faint = false, look = 'marked' }: Props) {
  const part = bodyPartOf(landmark);
  const shape = partShape[part];
  const hollow = {
    stroke: partColour[part],
    strokeWidth: 2.5,
    shadowColor: casing,
    shadowBlur: 3,
    shadowOpacity: 1,
    listening: false,
    ...(look === 'unsure' ? { dash: [3, 3] } : {}),
  };
  const paint =
    look === 'marked' ? { fill: partColour[part], stroke: casing, strokeWidth: 2, listening: false } : hollow;
  return (
    <Group x={x} y={y} scaleX={share} scaleY={share} opacity={faint ? 0.5 : 1} listening={false}>
      {selected && <Circle radius={13} stroke={casing} strokeWidth={5} />}
      {selected && <Circle radius={13} stroke="#ffffff" strokeWidth={2} />}
      {shape === 'circle' && <Circle radius={5.5} {...paint} />}
      {shape === 'square' && <Rect x={-5} y={-5} width={10} height={10} {...paint} />}
      {shape === 'diamond' && <Rect x={0} y={-7} width={9.9} height={9.9} rotation={45} {...paint} />}
      {shape === 'triangle' && <RegularPolygon sides={3} radius={7.5} {...paint} />}
    </Group>
  );
}
