import type { LandmarkName } from '../marks/landmark';
import type { Posture, Scene, Swim } from '../swim-file/swim-schema';

interface At {
  readonly x: number;
  readonly y: number;
}

/** A posture seen in a mirror: x about the picture's middle. Undoes itself. */
export function mirrorPosture(posture: Posture, width: number): Posture {
  const points: Posture['points'] = {};
  for (const [name, point] of Object.entries(posture.points))
    points[name as LandmarkName] = { x: width - point.x, y: point.y };
  return { ...posture, points };
}

/** A scene seen in a mirror; the swimmer goes the other way. Undoes itself. */
export function mirrorScene(scene: Scene, width: number): Scene {
  const turned = ({ x, y }: At) => ({ x: width - x, y });
  const line = ({ a, b }: { readonly a: At; readonly b: At }) => ({ a: turned(a), b: turned(b) });
  return {
    ...scene,
    travel: scene.travel === null ? null : scene.travel === 'left' ? 'right' : 'left',
    level: scene.level && line(scene.level),
    surface: scene.surface && line(scene.surface),
    scale: scene.scale && { ...scene.scale, line: line(scene.scale.line) },
    plane: scene.plane && {
      ...scene.plane,
      corners: [
        turned(scene.plane.corners[0]),
        turned(scene.plane.corners[1]),
        turned(scene.plane.corners[2]),
        turned(scene.plane.corners[3]),
      ],
    },
    straights: scene.straights.map((each) => each.map(turned)),
    still: scene.still.map((thing) => thing.map((mark) => ({ ...mark, ...turned(mark) }))),
  };
}

/**
 * A swim as a mirror shows it, so that two swims in opposite ways can be seen going the same way. Every reading stays
 * as it was: the direction of travel is turned with the points.
 */
export function mirrorSwim(swim: Swim): Swim {
  const { width } = swim.clip;
  return {
    ...swim,
    scene: mirrorScene(swim.scene, width),
    postures: swim.postures.map((posture) => mirrorPosture(posture, width)),
    followed: swim.followed.map((run) => ({
      ...run,
      points: run.points.map(([x, y, confidence]): [number, number, number] => [width - x, y, confidence]),
    })),
    seen: swim.seen.map((run) => ({
      ...run,
      points: run.points.map(([x, y, sd]): [number, number, number] => [width - x, y, sd]),
    })),
    cameraPath: swim.cameraPath.map((run) => ({
      ...run,
      moved: run.moved.map((row) => row.map(([x, y]): [number, number] => [-x, y])),
    })),
  };
}
