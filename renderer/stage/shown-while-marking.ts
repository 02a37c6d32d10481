import type { ToolId } from '../open-swim/view-store';

/** What may lie over the picture. */
interface ShownOverPicture {
  /** Level, surface, length and all else of the scene. */
  readonly scene: boolean;
  /** Laid and followed points. */
  readonly body: boolean;
  /** Angles, and what the machine saw. */
  readonly rest: boolean;
}

/**
 * Nothing lies over the swimmer that isn't being marked: moments are marked on the bare picture, points without angles and
 * scene, and the scene without the body.
 */
export function shownWhileMarking(tool: ToolId, passing: boolean): ShownOverPicture {
  if (tool === 'body-line') return { scene: false, body: true, rest: false };
  if (tool !== 'point' && tool !== 'look') return { scene: true, body: false, rest: false };
  return { scene: !passing, body: !passing, rest: !passing };
}
