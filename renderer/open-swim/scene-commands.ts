import type { Scene } from '#core/swim-file/swim-schema';
import type { Point } from '#core/units/point';
import type { SwimChange, SwimCommand } from './swim-command';
import { openSwimWords } from '#core/words/open-swim';

export type SceneItem = keyof Scene;
export type SceneLineItem = 'level' | 'surface' | 'scale';

export const sceneWords: Readonly<Record<SceneItem, string>> = {
  travel: openSwimWords('directionTravel'),
  level: openSwimWords('levelLine'),
  surface: openSwimWords('surfaceLine'),
  scale: openSwimWords('knownLength'),
  plane: openSwimWords('knownRectangle'),
  straights: openSwimWords('straightLines'),
  camera: openSwimWords('cameraDistance'),
  still: openSwimWords('thingsStandStill'),
};

export function setScene<Item extends SceneItem>(item: Item, value: Scene[Item]): SwimCommand {
  return {
    name:
      value === null
        ? openSwimWords('removeScene', { scene: sceneWords[item].toLowerCase() })
        : openSwimWords('set', { scene: sceneWords[item].toLowerCase() }),
    change: (draft) => {
      Object.assign(draft.scene, { [item]: structuredClone(value) });
    },
  };
}

/** One more line that is straight in the pool. */
export function addStraight(points: readonly Point[]): SwimCommand {
  return {
    name: openSwimWords('addStraightLine'),
    change: (draft) => {
      draft.scene.straights.push(points.map(({ x, y }) => ({ x, y })));
    },
  };
}

/** Takes away one of the lines that are straight in the pool. */
export function removeStraight(line: number): SwimCommand {
  return {
    name: openSwimWords('removeStraightLine'),
    change: (draft) => {
      draft.scene.straights.splice(line, 1);
    },
  };
}

/** The bare change of moving one end of a scene line, for drags. */
export function placeSceneEnd(item: SceneLineItem, end: 'a' | 'b', point: Point): SwimChange {
  return (draft) => {
    const line = item === 'scale' ? draft.scene.scale?.line : draft.scene[item];
    if (line) line[end] = { x: point.x, y: point.y };
  };
}

/** The bare change of moving one point of a straight line, for drags. */
export function placeStraightPoint(line: number, point: number, at: Point): SwimChange {
  return (draft) => {
    const points = draft.scene.straights[line];
    if (points?.[point]) points[point] = { x: at.x, y: at.y };
  };
}
