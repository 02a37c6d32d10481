import type { Point } from '#core/units/point';
import type { OpenSwim } from '../../open-swim/open-swim';
import type { ToolId } from '../../open-swim/view-store';

/** What happens when the coach presses, moves and lets go on the picture. Points are picture pixels. */
export interface StageTool {
  readonly id: ToolId;
  /** True when the press was taken; else the stage pans. `reach` is how near counts as "on it". */
  press(session: OpenSwim, at: Point, reach: number): boolean;
  drag(session: OpenSwim, at: Point): void;
  /** The pointer moves with nothing pressed. */
  hover?(session: OpenSwim, at: Point): void;
  release(session: OpenSwim, at: Point, reach: number): void;
}
