import type { FrameRange } from '#core/timeline/frame-range';
import { useEffect } from 'react';
import { useStore } from 'zustand';
import { useOpenSwim, useView } from '../open-swim/open-swim';
import { startPlayback } from '../open-swim/playback';

/** Our default: space held longer than this moves the picture; shorter is a tap, and plays. */
const tapMs = 350;

const typing = (target: EventTarget | null): boolean =>
  document.querySelector('dialog[open]') !== null ||
  (target instanceof HTMLElement &&
    target.closest('input, textarea, select, button, [role="button"]') !== null);

/** Space tapped plays or stops, all or a stretch; space held is left to the stage, for moving the picture. */
export function useSpaceToPlay(loop?: FrameRange): void {
  const session = useOpenSwim();
  const playing = useView((state) => state.playing);
  useEffect(() => {
    let downAt: number | null = null;
    const down = (event: KeyboardEvent): void => {
      if (event.code !== 'Space' || typing(event.target)) return;
      event.preventDefault();
      if (!event.repeat) downAt = performance.now();
    };
    const drag = (): void => {
      downAt = null;
    };
    const up = (event: KeyboardEvent): void => {
      if (event.code !== 'Space' || downAt === null || performance.now() - downAt > tapMs) return;
      downAt = null;
      if (!session.film.getState().source) return;
      session.view.setState({ playing: !session.view.getState().playing });
    };
    window.addEventListener('keydown', down);
    window.addEventListener('keyup', up);
    window.addEventListener('pointerdown', drag);
    return () => {
      window.removeEventListener('keydown', down);
      window.removeEventListener('keyup', up);
      window.removeEventListener('pointerdown', drag);
    };
  }, [session]);
  // another film of the same frames (a working copy) is played on from where the first was
  const source = useStore(session.film, (state) => state.source);
  useEffect(
    () => (playing && source ? startPlayback(session, loop) : undefined),
    [playing, source, session, loop],
  );
}
