import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { useBench } from '../bench/bench-session';
import { pictureOf } from '../export/draw-composition';

/** Pixels across; twice as fine as they are shown, for dense screens. */
const width = 240;
/** Bytes of decoded pictures held for thumbnails: a few at a time. */
const budget = 48 * 2 ** 20;

/**
 * Small pictures of frames, by frame, one after the other as they are decoded, through a film of its own so that the page's
 * preview is not held up. What was drawn stays while the screen is open.
 */
export function useThumbnails(frames: readonly number[]): ReadonlyMap<number, string> {
  const session = useBench();
  const reopen = useStore(session.film, (state) => state.reopen);
  const [drawn, setDrawn] = useState<ReadonlyMap<number, string>>(new Map());
  const known = useRef(drawn);
  known.current = drawn;
  const wanted = frames.join(' ');
  useEffect(() => {
    const missing = wanted
      .split(' ')
      .filter(Boolean)
      .map(Number)
      .filter((frame) => !known.current.has(frame));
    if (!reopen || missing.length === 0) return;
    const stop = new AbortController();
    const draw = async (): Promise<void> => {
      const opened = await reopen(budget, stop.signal);
      if (!opened.ok) return;
      try {
        for (const frame of missing) {
          const picture = await pictureOf(opened.value, frame, stop.signal);
          const canvas = document.createElement('canvas');
          canvas.width = width;
          canvas.height = Math.round((width * picture.height) / picture.width);
          const paper = canvas.getContext('2d', { alpha: false });
          if (!paper) throw new Error('a canvas has a 2D context');
          picture.draw(paper, 0, 0, canvas.width, canvas.height);
          stop.signal.throwIfAborted();
          const address = canvas.toDataURL('image/jpeg', 0.7);
          setDrawn((before) => new Map([...before, [frame, address]]));
        }
      } finally {
        opened.value.close();
      }
    };
    draw().catch((problem: unknown) => {
      // a picture that can't be decoded stays a grey field; the page's own preview says why
      if (!stop.signal.aborted && !(problem instanceof Error)) throw problem;
    });
    return () => stop.abort();
  }, [reopen, wanted]);
  return drawn;
}
