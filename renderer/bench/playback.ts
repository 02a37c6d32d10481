import { frameAtRealTime, realTimeOf } from '#core/timeline/clip-clock';
import { type BenchSession, clockOf } from './bench-session';

/**
 * Plays from the frame on the stage at a share of true speed until the end or until stopped. When decoding falls
 * behind, pictures are left out; the film never runs slower than it says without the number showing it, because
 * the frame asked for is always the frame under the clock.
 */
export function startPlayback(session: BenchSession): () => void {
  const { view } = session;
  const clock = clockOf(session.document.swim());
  const last = clock.table.starts.length - 1;
  const from = view.getState().frame >= last ? 0 : view.getState().frame;
  let startTime = realTimeOf(clock, from) as number;
  let startedAt: number | null = null;
  let pace = view.getState().pace;
  let handle = 0;
  view.setState({ frame: from, towards: 1 });
  const tick = (now: number): void => {
    handle = requestAnimationFrame(tick);
    const state = view.getState();
    if (startedAt === null || state.pace !== pace) {
      startTime = realTimeOf(clock, state.frame);
      startedAt = now;
      pace = state.pace;
    }
    // one picture at a time: a newer wish would drop the one being decoded, and nothing would ever show
    if (state.shownFrame !== state.frame) return;
    const frame = frameAtRealTime(clock, startTime + ((now - startedAt) / 1000) * pace);
    if (frame >= last) view.setState({ frame: last, playing: false });
    else if (frame !== state.frame) view.setState({ frame, towards: 1 });
  };
  handle = requestAnimationFrame(tick);
  return () => cancelAnimationFrame(handle);
}
