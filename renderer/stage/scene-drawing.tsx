import { Circle, Group, Line } from 'react-konva';
import type { Scene } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/point';
import type { SceneLineItem } from '../open-swim/scene-commands';
import type { DraftLine, Selection } from '../open-swim/view-store';
import { CasedLabel } from './cased-label';
import { casing } from '#core/drawing/landmark-look';
import { type StageView, toStage } from '../open-swim/stage-view';

interface Props {
  readonly scene: Scene;
  readonly draft: DraftLine | null;
  readonly view: StageView;
  readonly selection: Selection;
  /** Ends can be picked up now. */
  readonly editing: boolean;
}

const dashes: Readonly<Record<SceneLineItem, readonly number[]>> = {
  level: [10, 6],
  surface: [2, 7],
  scale: [],
};

/** Level is named at its left end and the others at their right: the level is often drawn along the surface. */
function labelPlace(item: SceneLineItem, from: Point, to: Point) {
  const [left, right] = from.x < to.x ? [from, to] : [to, from];
  return item === 'level'
    ? ({ x: left.x, y: left.y, side: 'right' } as const)
    : ({ x: right.x, y: right.y, side: 'left' } as const);
}

/** Level, surface and known length, each told apart by its dashes and its word. */
export function SceneDrawing({ scene, draft, view, selection, editing }: Props) {
  const items: { item: SceneLineItem; a: Point; b: Point; words: string }[] = [];
  if (scene.level) items.push({ item: 'level', ...scene.level, words: 'level' });
  if (scene.surface) items.push({ item: 'surface', ...scene.surface, words: 'surface' });
  if (scene.scale && draft?.item !== 'scale')
    items.push({ item: 'scale', ...scene.scale.line, words: `${scene.scale.metres} m` });
  if (draft) items.push({ item: draft.item, a: draft.a, b: draft.b, words: '' });
  return (
    <Group listening={false}>
      {items.map(({ item, a, b, words }, index) => {
        const from = toStage(view, a);
        const to = toStage(view, b);
        const points = [from.x, from.y, to.x, to.y];
        const ends = (['a', 'b'] as const).map((end) => ({ end, at: end === 'a' ? from : to }));
        const isDraft = draft !== null && index === items.length - 1;
        const held = isDraft || editing || (selection.kind === 'scene' && selection.item === item);
        return (
          <Group key={isDraft ? 'draft' : item}>
            <Line points={points} stroke={casing} strokeWidth={5} opacity={0.55} />
            <Line points={points} stroke="#ffffff" strokeWidth={2} dash={[...dashes[item]]} opacity={0.9} />
            {(held || item === 'scale') &&
              ends.map(({ end, at }) => {
                const chosen = selection.kind === 'scene' && selection.item === item && selection.end === end;
                return (
                  <Group key={end} x={at.x} y={at.y}>
                    <Circle radius={chosen ? 11 : 6} stroke={casing} strokeWidth={5} />
                    <Circle radius={chosen ? 11 : 6} stroke="#ffffff" strokeWidth={2} />
                  </Group>
                );
              })}
            {words !== '' && <CasedLabel {...labelPlace(item, from, to)} words={words} />}
          </Group>
        );
      })}
    </Group>
  );
}
