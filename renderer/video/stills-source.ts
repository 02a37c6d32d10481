import type { FrameRange } from '#core/timeline/frame-range';
import type { Result } from '#core/host-contract/host-error';
import type { Still } from '#core/host-contract/operations/media-operations';
import { clampFrame } from '#core/timeline/frame-table';
import { coloursByDrawing } from './colour-part';
import type { ClipFacts, FramePicture, FrameSource } from './frame-source';
import { isGone } from './is-gone';
import { PictureLost } from './picture-lost';
import { smallGreyByDrawing } from './small-grey';

export interface StillsOptions {
  readonly facts: ClipFacts;
  /** Frames of the clip around the one asked for, which has to be among them. */
  readonly ask: (around: FrameRange, asked: number) => Promise<Result<readonly Still[]>>;
  readonly budgetBytes: number;
}

/** Frames asked for with the one wanted: they cost little more than it alone, as all of its group is decoded for it. */
const onTheWay = 6;

/**
 * Pictures of a clip that this window can't decode, made one by one by the host's tools: a second or so for each that is not
 * held. For looking, until something quicker is there; only the last frame asked for is ever fetched.
 */
export function createStillsSource({ facts, ask, budgetBytes }: StillsOptions): FrameSource {
  const { width, height, table } = facts;
  const held = new Map<number, { readonly bitmap: ImageBitmap; readonly picture: FramePicture }>();
  let budget = budgetBytes;
  const most = (): number => Math.max(2 * onTheWay, Math.floor(budget / (width * height * 4)));
  let request: Request | null = null;
  let asking = false;
  let closed = false;
  /** The picture handed over last: it is on the stage, and stays. */
  let onStage = -1;

  const settle = (end: (settled: Request) => void): void => {
    const settled = request;
    request = null;
    if (settled) end(settled);
  };

  const keep = async ({ frame, jpeg }: Still): Promise<void> => {
    const bytes = Uint8Array.from(atob(jpeg), (letter) => letter.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/jpeg' }));
    if (closed) {
      bitmap.close();
      return;
    }
    held.get(frame)?.bitmap.close();
    held.delete(frame);
    held.set(frame, { bitmap, picture: pictureOf(frame, bitmap, facts) });
    letGo();
  };
  /** The oldest go first. */
  const letGo = (): void => {
    for (const [oldest, { bitmap: left }] of held) {
      if (held.size <= most()) break;
      if (oldest === onStage) continue;
      left.close();
      held.delete(oldest);
    }
  };

  const work = async (): Promise<void> => {
    if (asking) return;
    asking = true;
    try {
      while (request && !closed) {
        const wanted: Request = request;
        const answer = await ask(around(wanted, facts), wanted.frame);
        if (answer.ok) for (const still of answer.value) await keep(still);
        if (closed) return;
        const came = request ? held.get(request.frame) : undefined;
        if (came)
          settle(({ frame, resolve }) => {
            onStage = frame;
            resolve(came.picture);
          });
        else if (request === wanted)
          settle(({ frame, reject }) => {
            const gone =
              !answer.ok && ['clip-missing', 'clip-changed', 'host-unreachable'].includes(answer.error.code);
            reject(new PictureLost(frame, answer.ok ? 'it is damaged' : answer.error.code, gone));
          });
      }
    } finally {
      asking = false;
    }
  };

  return {
    facts,
    resolution: { width, height },
    held: (frame) => held.get(frame)?.picture ?? null,
    show(frame, towards) {
      settle(({ reject }) => reject(new DOMException('A newer frame was asked for', 'AbortError')));
      if (closed) return Promise.reject(new DOMException('The clip is closed', 'AbortError'));
      const wanted = clampFrame(table, frame);
      const there = held.get(wanted);
      if (there) {
        onStage = wanted;
        return Promise.resolve(there.picture);
      }
      return new Promise((resolve, reject) => {
        request = { frame: wanted, towards, resolve, reject };
        void work();
      });
    },
    memory: () => ({ heldBytes: held.size * width * height * 4, budgetBytes: budget, pictures: held.size }),
    limitTo(bytes) {
      budget = bytes;
      letGo();
    },
    close() {
      closed = true;
      settle(({ reject }) => reject(new DOMException('The clip is closed', 'AbortError')));
      for (const { bitmap } of held.values()) bitmap.close();
      held.clear();
    },
  };
}

/** The frames asked for with one: those on the way. */
function around({ frame, towards }: Request, { table }: ClipFacts): FrameRange {
  const ahead = towards === 0 ? onTheWay >> 1 : onTheWay;
  const behind = towards === 0 ? onTheWay >> 1 : 0;
  const [below, above] = towards < 0 ? [ahead, behind] : [behind, ahead];
  return { first: clampFrame(table, frame - below), last: clampFrame(table, frame + above) };
}

interface Request {
  readonly frame: number;
  readonly towards: -1 | 0 | 1;
  resolve(picture: FramePicture): void;
  reject(reason: unknown): void;
}

function pictureOf(frame: number, bitmap: ImageBitmap, { width, height }: ClipFacts): FramePicture {
  const draw: FramePicture['draw'] = (context, ...place) => {
    if (!isGone(bitmap)) context.drawImage(bitmap, ...place);
  };
  return {
    ...{ frame, width, height, whole: true, draw },
    colours: (part) => coloursByDrawing(draw, { width, height }, part),
    smallGrey: (step) => smallGreyByDrawing(draw, { width, height }, step),
  };
}
