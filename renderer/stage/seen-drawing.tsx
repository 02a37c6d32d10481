import { Circle, Group, Line } from 'react-konva';
import { useStore } from 'zustand';
import { bodyPartOf, casing, partColour } from '#core/drawing/landmark-look';
import { bodyChain, type LandmarkName, landmarkNames } from '#core/marks/landmark';
import type { Swim } from '#core/swim-file/swim-schema';
import { useOpenSwim, useSwim } from '../open-swim/open-swim';
import { followedOf } from '../open-swim/follow-selectors';
import { markShare } from '#core/drawing/mark-size';
import { CasedLabel, labelLetters } from './cased-label';
import { type StageView, toStage } from '../open-swim/stage-view';
import { postureOn } from '../open-swim/selectors';
import { seenOf } from '../open-swim/see-selectors';
import { seeStoreOf } from '../open-swim/see-store';
import { stageWords } from '#core/words/stage';

/** A point that may be off by more, one axis, is drawn with a broken edge; share of the seen body's own reach. Our choice. */
const unsureShare = 0.02;

interface Shown {
  readonly frame: number;
  readonly view: StageView;
  /** How tall the swimmer is on the stage, CSS pixels; null where that isn't known. */
  readonly height: number | null;
}

/** What the machine saw on the bench's frame; while the coach is asked which swimmer is meant, each has a number. */
export function SeenDrawing({ frame, view, height }: Shown) {
  const several = useStore(seeStoreOf(useOpenSwim()), (state) => state.several);
  const swim = useSwim((each) => each);
  return (
    <>
      <SeenPoints swim={swim} frame={frame} view={view} height={height} />
      {several?.frame === frame &&
        several.squares.map((square, i) => {
          const middle = toStage(view, square);
          return (
            <CasedLabel
              key={`${square.x}`}
              x={middle.x}
              y={middle.y}
              words={stageWords('swimmer', { i: i + 1 })}
              side="centre"
            />
          );
        })}
    </>
  );
}

/**
 * What the machine saw on a frame without a mark: a dotted line and small rings, with words that nobody has reviewed it. Marked
 * and followed points go before them.
 */
export function SeenPoints({ swim, frame, view, height }: Shown & { readonly swim: Swim }) {
  const share = markShare(height, labelLetters);
  const seen = seenOf(swim).get(frame);
  const posture = postureOn(swim, frame);
  const followed = followedOf(swim).get(frame);
  const shown = landmarkNames.flatMap((name) => {
    const point = seen?.get(name);
    const known = posture?.points[name] || posture?.hidden.includes(name) || followed?.has(name);
    return point && !known ? [{ name, ...toStage(view, point), sd: point.sd }] : [];
  });
  const at = new Map<LandmarkName, (typeof shown)[number]>(shown.map((each) => [each.name, each]));
  const [shoulder, ankle] = [seen?.get('shoulder'), seen?.get('ankle')];
  // shoulder to ankle is a little over half of fingertip to toe
  const reach = shoulder && ankle ? Math.hypot(shoulder.x - ankle.x, shoulder.y - ankle.y) / 0.59 : 0;
  const lines = bodyChain.slice(1).flatMap((to, i) => {
    const [a, b] = [at.get(bodyChain[i] ?? to), at.get(to)];
    return a && b ? [{ key: to, points: [a.x, a.y, b.x, b.y] }] : [];
  });
  const highest = shown.reduce<(typeof shown)[number] | null>(
    (top, each) => (top && top.y <= each.y ? top : each),
    null,
  );
  return (
    <Group listening={false}>
      {lines.map(({ key, points }) => (
        <Line key={`c${key}`} points={points} stroke={casing} strokeWidth={4 * share} opacity={0.5} />
      ))}
      {lines.map(({ key, points }) => (
        <Line
          key={`l${key}`}
          points={points}
          stroke="#ffffff"
          strokeWidth={1.6 * share}
          lineCap="round"
          dash={[0.5, 5 * share]}
        />
      ))}
      {shown.map(({ name, x, y, sd }) => (
        <Circle
          key={name}
          x={x}
          y={y}
          radius={4.5 * share}
          stroke={partColour[bodyPartOf(name)]}
          strokeWidth={2 * share}
          shadowColor={casing}
          shadowBlur={3}
          shadowOpacity={1}
          {...(sd > unsureShare * reach ? { dash: [2.5 * share, 2.5 * share] } : {})}
        />
      ))}
      {highest && (
        <CasedLabel
          x={highest.x}
          y={Math.max(16, highest.y - 26)}
          words={stageWords('seenNotReviewed')}
          side="centre"
        />
      )}
    </Group>
  );
}
