import { Group } from 'react-konva';
import { bodyLineOps, chainOf } from '#core/drawing/body-line-ops';
import type { DrawingOp } from '#core/drawing/drawing-op';
import { angleLabels } from '#core/drawing/joint-angles';
import { casing } from '#core/drawing/landmark-look';
import { labelsWithRoom, markShare } from '#core/drawing/mark-size';
import { placeLabels, pointsAlong } from '#core/drawing/place-labels';
import { movedPosture } from '#core/drawing/shown-line';
import { landmarkNames } from '#core/marks/landmark';
import type { Posture, Swim } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/point';
import { type Size, type StageView, toStage } from '../open-swim/stage-view';
import type { Selection } from '../open-swim/view-store';
import { CasedLabel, labelLetters, labelSize } from './cased-label';
import { Painted } from './painted';

interface Props {
  readonly posture: Posture;
  readonly swim: Pick<Swim, 'scene' | 'card'>;
  readonly view: StageView;
  /** Of the stage: labels stay on it. */
  readonly size: Size;
  readonly selection: Selection;
  readonly showAngles: boolean;
  /** How tall the swimmer is on the stage, CSS pixels; null where that isn't known. */
  readonly height: number | null;
}

/** The size of a body line on the stage, told as that of letters beside it, CSS pixels. */
export const stageUnit = 15.5;

const chosenRing = (at: Point, share: number): readonly DrawingOp[] => [
  { op: 'disc', at, radius: 13 * share, fill: null, edge: { colour: casing, width: 5 * share } },
  { op: 'disc', at, radius: 13 * share, fill: null, edge: { colour: '#ffffff', width: 2 * share } },
];

/** The coach's body line on the stage, with the joints' angles and a ring about the chosen landmark. */
export function BodyLineDrawing({ posture, swim, view, size, selection, showAngles, height }: Props) {
  const placed = movedPosture(posture, (point) => toStage(view, point));
  const chosen =
    selection.kind === 'landmark' && selection.frame === posture.frame
      ? placed.points[selection.landmark]
      : undefined;
  const share = markShare(height, labelLetters);
  const said = showAngles ? labelsWithRoom(angleLabels(posture, swim), height, labelLetters) : [];
  const labels = said.flatMap((label) => {
    const at = placed.points[label.at];
    return at ? [{ ...label, at }] : [];
  });
  const marks = landmarkNames.flatMap((name) => placed.points[name] ?? []);
  const boxes = labels.map(({ at, words }) => ({ at, ...labelSize(words) }));
  const centres = placeLabels(boxes, [...marks, ...pointsAlong(chainOf(placed), 8)], 13, size);
  return (
    <Group listening={false}>
      <Painted
        drawing={[
          ...bodyLineOps(placed, stageUnit * share, [], 'broken'),
          ...(chosen ? chosenRing(chosen, share) : []),
        ]}
      />
      {labels.map((label, index) => {
        const centre = centres[index];
        if (!centre) return null;
        return <CasedLabel key={label.words} x={centre.x} y={centre.y} words={label.words} side="centre" />;
      })}
    </Group>
  );
}
