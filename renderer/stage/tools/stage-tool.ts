import type { PicturePoint } from '#core/units/brand';
import type { OpenSwim } from '../../open-swim/open-swim';
import type { ToolId } from '../../open-swim/view-store';

/** What happens when the coach presses, moves and lets go on the picture. Points are picture pixels. */
export interface StageTool {
  readonly id: ToolId;
  /** True when the press was taken; else the stage pans. `reach` is how near counts as "on it". */
  press(session: OpenSwim, at: PicturePoint, reach: number): boolean;
  drag(session: OpenSwim, at: PicturePoint): void;
  /** The pointer moves with nothing pressed. */
  hover?(session: OpenSwim, at: PicturePoint): void;
  release(session: OpenSwim, at: PicturePoint, reach: number): void;
}
