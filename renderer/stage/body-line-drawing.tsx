import { Group, Line } from 'react-konva';
import { bodyChain, landmarkNames } from '#core/marks/landmark';
import type { Posture, Swim } from '#core/swim-file/swim-schema';
import type { Selection } from '../open-swim/view-store';
import { CasedLabel, labelLetters, labelSize } from './cased-label';
import { angleLabels } from '#core/drawing/joint-angles';
import { LandmarkMark } from './landmark-mark';
import { labelsWithRoom, markShare } from '#core/drawing/mark-size';
import { casing } from '#core/drawing/landmark-look';
import { placeLabels, pointsAlong } from '#core/drawing/place-labels';
import { type Size, type StageView, toStage } from '../open-swim/stage-view';

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

/** Runs of neighbouring laid landmarks along the chain; a hidden one breaks the line into dashes across the gap. */
function chainRuns(posture: Posture): { readonly points: number[]; readonly bridged: boolean }[] {
  const laid = bodyChain.flatMap((name, place) => {
    const point = posture.points[name];
    return point ? [{ point, place }] : [];
  });
  return laid.slice(1).map((to, index) => {
    const from = laid[index] ?? to;
    return {
      points: [from.point.x, from.point.y, to.point.x, to.point.y],
      bridged: to.place - from.place > 1,
    };
  });
}

export function BodyLineDrawing({ posture, swim, view, size, selection, showAngles, height }: Props) {
  const runs = chainRuns(posture).map((run) => {
    const a = toStage(view, { x: run.points[0] ?? 0, y: run.points[1] ?? 0 });
    const b = toStage(view, { x: run.points[2] ?? 0, y: run.points[3] ?? 0 });
    return { points: [a.x, a.y, b.x, b.y], bridged: run.bridged };
  });
  const share = markShare(height, labelLetters);
  const said = showAngles ? labelsWithRoom(angleLabels(posture, swim), height, labelLetters) : [];
  const labels = said.flatMap((label) => {
    const joint = posture.points[label.at];
    return joint ? [{ ...label, joint }] : [];
  });
  const marks = landmarkNames.flatMap((name) => {
    const point = posture.points[name];
    return point ? [toStage(view, point)] : [];
  });
  const boxes = labels.map((label) => ({
    at: toStage(view, label.joint),
    ...labelSize(label.words),
  }));
  const line = bodyChain.flatMap((name) => {
    const point = posture.points[name];
    return point ? [toStage(view, point)] : [];
  });
  const centres = placeLabels(boxes, [...marks, ...pointsAlong(line, 8)], 13, size);
  return (
    <Group listening={false}>
      {runs.map((run) => (
        <Line
          key={`c${run.points.join()}`}
          points={run.points}
          stroke={casing}
          strokeWidth={6.5 * share}
          opacity={0.75}
          lineCap="round"
        />
      ))}
      {runs.map((run) => (
        <Line
          key={`l${run.points.join()}`}
          points={run.points}
          stroke="#ffffff"
          strokeWidth={2.5 * share}
          lineCap="round"
          {...(run.bridged ? { dash: [2 * share, 8 * share] } : {})}
        />
      ))}
      {landmarkNames.map((landmark) => {
        const point = posture.points[landmark];
        if (!point) return null;
        const at = toStage(view, point);
        const selected =
          selection.kind === 'landmark' &&
          selection.landmark === landmark &&
          selection.frame === posture.frame;
        const mark = { landmark, x: at.x, y: at.y, selected, share };
        return <LandmarkMark key={landmark} {...mark} />;
      })}
      {labels.map((label, index) => {
        const centre = centres[index];
        if (!centre) return null;
        return <CasedLabel key={label.words} x={centre.x} y={centre.y} words={label.words} side="centre" />;
      })}
    </Group>
  );
}
