import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { useOpenSwim } from '../open-swim/open-swim';
import type { Rect } from '#core/drawing/composition';
import { pictureView } from '#core/drawing/picture-view';
import { pictureOf } from '../export/draw-composition';

/** Pixels; twice as fine as they are shown, for dense screens. */
const slot: Rect = { x: 0, y: 0, width: 240, height: 136 };
/** Bytes of decoded pictures held for thumbnails: a few at a time. */
const budget = 48 * 2 ** 20;

/**
 * Small pictures of the whole swimmer on frames, by frame, one after the other as they are decoded, through a film of its own so that the page's
 * preview is not held up. What was drawn stays while the screen is open.
 */
export function useThumbnails(
  frames: readonly number[],
  roomOn: (frame: number) => Rect | null,
): ReadonlyMap<number, string> {
  const session = useOpenSwim();
  const reopen = useStore(session.film, (state) => state.reopen);
  const [drawn, setDrawn] = useState<ReadonlyMap<number, string>>(new Map());
  const known = useRef(drawn);
  known.current = drawn;
  const rooms = useRef(roomOn);
  rooms.current = roomOn;
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
          const { crop, at } = pictureView(rooms.current(frame), picture, slot);
          canvas.width = Math.round(at.width);
          canvas.height = Math.round(at.height);
          const paper = canvas.getContext('2d', { alpha: false });
          if (!paper) throw new Error('a canvas has a 2D context');
          const [across, down] = [canvas.width / crop.width, canvas.height / crop.height];
          picture.draw(
            paper,
            -crop.x * across,
            -crop.y * down,
            picture.width * across,
            picture.height * down,
          );
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
