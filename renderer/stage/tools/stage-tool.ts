import type { PicturePoint } from '#core/units/brand';
import type { BenchSession } from '../../bench/bench-session';
import type { ToolId } from '../../state/view-store';

/** What happens when the coach presses, moves and lets go on the picture. Points are picture pixels. */
export interface StageTool {
  readonly id: ToolId;
  /** True when the press was taken; else the stage pans. `reach` is how near counts as "on it". */
  press(session: BenchSession, at: PicturePoint, reach: number): boolean;
  drag(session: BenchSession, at: PicturePoint): void;
  /** The pointer moves with nothing pressed. */
  hover?(session: BenchSession, at: PicturePoint): void;
  release(session: BenchSession, at: PicturePoint, reach: number): void;
}
