import { useEffect, useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import { useOpenSwim, useView } from '../open-swim/open-swim';
import { createStepWatch } from '../open-swim/step-watch';
import type { FramePicture, FrameSource } from '../video/frame-source';
import { PictureLost } from '../video/picture-lost';
import type { Size, StageView } from '../open-swim/stage-view';
import { stageWords } from '#core/words/stage';

interface Props {
  /** How the picture of a frame lies on the stage. */
  readonly viewAt: (frame: number) => StageView;
  readonly size: Size;
  /** Shown as in a mirror. */
  readonly mirrored?: boolean;
}

/** The film's picture, at the screen's own resolution. Keeps the last picture until the next one is decoded. */
export function PictureCanvas({ viewAt, size, mirrored = false }: Props) {
  const session = useOpenSwim();
  const source = useStore(session.film, (state) => state.source);
  const frame = useView((state) => state.frame);
  const playing = useView((state) => state.playing);
  const canvas = useRef<HTMLCanvasElement>(null);
  const picture = useRef<FramePicture | null>(null);
  const place = useRef({ viewAt, size, mirrored });
  place.current = { viewAt, size, mirrored };

  // a film that is put away takes its pictures along; the screen keeps the last one
  useEffect(() => {
    if (!source) return;
    return () => {
      picture.current = null;
    };
  }, [source]);

  const watch = useMemo(
    () => createStepWatch((slowMs) => source && session.film.setState({ slowMs })),
    [source, session],
  );
  useEffect(() => {
    if (!source) return;
    let left = false;
    const present = (next: FramePicture): void => {
      picture.current = next;
      paint(canvas.current, next, place.current);
      session.view.setState({ shownFrame: next.frame });
    };
    const held = source.held(frame);
    if (held) present(held);
    // the player asks for its pictures itself; another request here would drop its next one
    if (held && playing) return;
    const step = watch.asked(frame, performance.now());
    // half size will do while moving; where the coach stops, the whole picture follows
    const onWhole = (whole: FramePicture): void => {
      if (!left) present(whole);
    };
    source.show(frame, session.view.getState().towards, onWhole).then(
      (next) => {
        if (left) return;
        step.came();
        if (!held) present(next);
        // drawing a large picture can take longer than decoding it: a step ends when the screen has taken it
        requestAnimationFrame(() => step.shown(performance.now()));
      },
      (problem: unknown) => {
        if (left || (problem instanceof DOMException && problem.name === 'AbortError')) return;
        if (problem instanceof PictureLost && problem.unreadable) {
          void session.keeper.unreadable();
          return;
        }
        session.view.setState({ lostFrame: frame });
        session.say(stageWords('frameCantDecoded', { frame: frame + 1 }));
      },
    );
    return () => {
      left = true;
    };
  }, [source, frame, playing, session, watch]);

  // a copy of a large film is smaller: where the coach stops and looks closely, the clip's own picture is shown
  const closer = source !== null && isLargerThanCopy(viewAt(frame), source);
  useEffect(() => {
    if (!closer || playing) return;
    let left = false;
    const timer = setTimeout(async () => {
      const own = await session.keeper.ownPicture(frame);
      if (left || !own || session.view.getState().shownFrame !== frame) return;
      picture.current = own;
      paint(canvas.current, own, place.current);
    }, closerAfterMs);
    return () => {
      left = true;
      clearTimeout(timer);
    };
  }, [closer, playing, frame, session]);

  // the same picture in a new place or size; a new picture was painted when it came
  useEffect(() => {
    const { shownFrame } = session.view.getState();
    if (shownFrame === null) return;
    const kept = picture.current?.frame === shownFrame ? picture.current : null;
    const now = kept ?? source?.held(shownFrame) ?? picture.current;
    if (now) paint(canvas.current, now, { viewAt, size, mirrored });
  }, [source, session, viewAt, size, mirrored]);

  return <canvas ref={canvas} className="stage-picture" style={{ width: size.width, height: size.height }} />;
}

/** Our default: how long the coach looks at a frame before its own picture is fetched; a walk never waits for it. */
const closerAfterMs = 400;

/** Whether a pixel of the copy would cover more than one of the screen's, though the clip has finer ones. */
function isLargerThanCopy({ scale }: StageView, { resolution, facts }: FrameSource): boolean {
  const share = resolution.width / facts.width;
  return share < 0.99 && scale * (window.devicePixelRatio || 1) > share;
}

interface Place {
  readonly viewAt: (frame: number) => StageView;
  readonly size: Size;
  readonly mirrored: boolean;
}

function paint(
  canvas: HTMLCanvasElement | null,
  picture: FramePicture,
  { viewAt, size, mirrored }: Place,
): void {
  const context = canvas?.getContext('2d', { alpha: false });
  if (!canvas || !context) return;
  const view = viewAt(picture.frame);
  const ratio = window.devicePixelRatio || 1;
  const width = Math.round(size.width * ratio);
  const height = Math.round(size.height * ratio);
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }
  const right = (view.x + picture.width * view.scale) * ratio;
  const bottom = (view.y + picture.height * view.scale) * ratio;
  context.fillStyle = '#04090c';
  if (view.x > 0 || view.y > 0 || right < width || bottom < height) context.fillRect(0, 0, width, height);
  // single picture pixels are worth seeing once each is many screen pixels wide
  context.imageSmoothingEnabled = view.scale * ratio < 6;
  context.imageSmoothingQuality = 'high';
  const across = picture.width * view.scale * ratio;
  const down = picture.height * view.scale * ratio;
  context.save();
  context.translate(mirrored ? right : view.x * ratio, view.y * ratio);
  if (mirrored) context.scale(-1, 1);
  picture.draw(context, 0, 0, across, down);
  context.restore();
}
