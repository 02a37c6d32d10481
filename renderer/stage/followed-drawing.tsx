import { Circle, Group, Line } from 'react-konva';
import { sureEnough } from '#core/follow/follow-confidence';
import type { FollowedPoint } from '#core/follow/followed-posture';
import { bodyChain, type LandmarkName } from '#core/marks/landmark';
import type { Posture } from '#core/swim-file/swim-schema';
import { FollowedMark } from './followed-mark';
import { casing } from '#core/drawing/landmark-look';
import { markShare } from '#core/drawing/mark-size';
import { labelLetters } from './cased-label';
import { type StageView, toStage } from '../open-swim/stage-view';

interface Props {
  readonly followed: ReadonlyMap<LandmarkName, FollowedPoint>;
  readonly posture: Posture | null;
  readonly view: StageView;
  /** The point the coach is asked about on this frame. */
  readonly asked?: LandmarkName | null;
  /** How tall the swimmer is on the stage, CSS pixels; null where that isn't known. */
  readonly height: number | null;
}

/** What the machine followed on this frame: a dashed line and hollow points, never to be taken for the coach's. */
export function FollowedDrawing({ followed, posture, view, asked = null, height }: Props) {
  const share = markShare(height, labelLetters);
  const place = (name: LandmarkName) => {
    const marked = posture?.points[name];
    const guess = followed.get(name);
    if (marked) return { at: toStage(view, marked), guessed: false };
    return guess && !posture?.hidden.includes(name) ? { at: toStage(view, guess), guessed: true } : null;
  };
  const ringed = asked === null ? null : place(asked);
  const chain = bodyChain.map(place);
  const pieces = chain.slice(1).flatMap((to, i) => {
    const from = chain[i];
    return from && to && (from.guessed || to.guessed)
      ? [{ key: bodyChain[i] ?? '', points: [from.at.x, from.at.y, to.at.x, to.at.y] }]
      : [];
  });
  return (
    <Group listening={false}>
      {pieces.map(({ key, points }) => (
        <Line key={`c${key}`} points={points} stroke={casing} strokeWidth={4 * share} opacity={0.6} />
      ))}
      {pieces.map(({ key, points }) => (
        <Line key={`l${key}`} points={points} stroke="#ffffff" strokeWidth={1.8 * share} dash={[5, 5]} />
      ))}
      {[...followed].map(([landmark, point]) => {
        const own = place(landmark);
        return own?.guessed ? (
          <FollowedMark
            key={landmark}
            landmark={landmark}
            x={own.at.x}
            y={own.at.y}
            share={share}
            unsure={point.confidence < sureEnough}
          />
        ) : null;
      })}
      {ringed?.guessed && (
        <>
          <Circle x={ringed.at.x} y={ringed.at.y} radius={22} stroke={casing} strokeWidth={6} opacity={0.7} />
          <Circle x={ringed.at.x} y={ringed.at.y} radius={22} stroke="#ffffff" strokeWidth={2.5} />
        </>
      )}
    </Group>
  );
}
