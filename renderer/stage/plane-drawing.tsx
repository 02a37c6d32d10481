import { Circle, Group, Line } from 'react-konva';
import type { Scene } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/point';
import type { DraftPointsItem, Selection } from '../open-swim/view-store';
import { CasedLabel } from './cased-label';
import { casing } from '#core/drawing/landmark-look';
import { type StageView, toStage } from '../open-swim/stage-view';
import { stageWords } from '#core/words/stage';

interface Props {
  readonly scene: Scene;
  readonly draft: { readonly item: DraftPointsItem; readonly points: readonly Point[] } | null;
  readonly view: StageView;
  readonly selection: Selection;
}

/** The known rectangle and the straight lines of the scene, and the one being drawn, each told by dashes and word. */
export function PlaneDrawing({ scene, draft, view, selection }: Props) {
  const { plane, straights } = scene;
  const redrawn = draft?.item === 'plane' && draft.points.length > 0;
  return (
    <Group listening={false}>
      {plane && !redrawn && (
        <Path
          points={plane.corners}
          view={view}
          closed
          dash={[14, 5]}
          words={`${plane.alongMetres} × ${plane.upMetres} m`}
        />
      )}
      {straights.map((points, index) => (
        <Path
          // biome-ignore lint/suspicious/noArrayIndexKey: a line has no other name than its place
          key={index}
          points={points}
          view={view}
          ends
          chosen={selection.kind === 'straight' && selection.line === index ? selection.point : null}
          dash={[4, 4, 12, 4]}
          words={stageWords('straight')}
        />
      ))}
      {draft && (
        <Path
          points={draft.points}
          view={view}
          closed={draft.item === 'plane' && draft.points.length === 4}
          ends
          words=""
        />
      )}
    </Group>
  );
}

interface PathProps {
  readonly points: readonly Point[];
  readonly view: StageView;
  readonly words: string;
  readonly closed?: boolean;
  readonly ends?: boolean;
  /** The point that is held. */
  readonly chosen?: number | null;
  readonly dash?: readonly number[];
}

function Path({ points, view, words, closed = false, ends = false, chosen = null, dash = [] }: PathProps) {
  const on = points.map((point) => toStage(view, point));
  const flat = on.flatMap(({ x, y }) => [x, y]);
  const [first] = on;
  return (
    <>
      <Line points={flat} closed={closed} stroke={casing} strokeWidth={5} opacity={0.55} />
      <Line points={flat} closed={closed} stroke="#ffffff" strokeWidth={2} dash={[...dash]} opacity={0.9} />
      {ends &&
        on.map(({ x, y }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a point has no other name than its place
          <Group key={index} x={x} y={y}>
            <Circle radius={index === chosen ? 11 : 6} stroke={casing} strokeWidth={5} />
            <Circle radius={index === chosen ? 11 : 6} stroke="#ffffff" strokeWidth={2} />
          </Group>
        ))}
      {first && words !== '' && <CasedLabel x={first.x} y={first.y} words={words} side="right" />}
    </>
  );
}
