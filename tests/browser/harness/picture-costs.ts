import { closeFrame, opened } from '../../../renderer/video/frame-ledger';
import { makeDecoderInWorker } from '../../../renderer/video/decoder-in-worker';
import { holdPicture } from '../../../renderer/video/held-picture';
import { openFilmInWorker } from '../../../renderer/video/open-film-in-worker';

/** Milliseconds a picture, medians but for decoding: what each part of the way to the screen takes by itself. */
export interface PictureCosts {
  /** Decoding straight on, nothing else going on: time by pictures. */
  readonly decode: number;
  readonly copy: number;
  /** Making half size of it; null where that can't be made exactly. */
  readonly halve: number | null;
  readonly draw: number;
  readonly drawHalf: number | null;
}

const never = new AbortController().signal;
const decoded = 90;
const handled = 12;

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;

/** Decodes a clip's first pictures and takes a few of them through what is done with each. */
export async function pictureCosts(address: string): Promise<PictureCosts> {
  const film = await openFilmInWorker({ address }, never);
  if (!film.ok || !film.value.decoding || film.value.decoding === 'images')
    throw new Error('a film decoder is needed');
  const { index, decoding, facts } = film.value;
  const kept: VideoFrame[] = [];
  let [out, began, ended] = [0, 0, 0];
  const decoder = makeDecoderInWorker({
    output: (picture) => {
      out += 1;
      ended = performance.now();
      if (out % 7 === 0 && kept.length < handled) kept.push(opened(picture));
      else picture.close();
    },
    died: () => undefined,
    taken: () => undefined,
  });
  const packets = [];
  for await (const packet of index.readFrom(0)) if (packets.push(packet) >= decoded) break;
  // once for the program and its tables, once to be timed
  for (const round of [0, 1]) {
    decoder.begin(decoding);
    out = 0;
    began = performance.now();
    for (const [coded, { type, data }] of packets.entries())
      decoder.decode({ type, timestamp: coded * 1000, data: data.slice() });
    await decoder.flush();
    if (round === 0) for (const picture of kept.splice(0)) closeFrame(picture);
  }
  decoder.close();
  film.value.close();

  const canvas = document.createElement('canvas');
  canvas.width = Math.min(1280, facts.width);
  canvas.height = Math.round((canvas.width * facts.height) / facts.width);
  const context = canvas.getContext('2d', { alpha: false });
  if (!context) throw new Error('no canvas');
  const timed = (work: () => void): number => {
    const from = performance.now();
    work();
    return performance.now() - from;
  };
  const parts: { copy: number; halve: number | null; draw: number; drawHalf: number | null }[] = [];
  for (const picture of kept) {
    const from = performance.now();
    const whole = await holdPicture(picture, {
      ...{ frame: 0, shown: facts, half: false, moving: false },
      turning: { rotation: facts.rotation, flip: false },
    });
    const copy = performance.now() - from;
    let half: ReturnType<typeof whole.halved> = null;
    const halve = timed(() => {
      half = whole.halved();
    });
    const draw = timed(() => whole.draw(context, 0, 0, canvas.width, canvas.height));
    const drawHalf = timed(() =>
      (half as typeof whole | null)?.draw(context, 0, 0, canvas.width, canvas.height),
    );
    parts.push({ copy, draw, ...(half ? { halve, drawHalf } : { halve: null, drawHalf: null }) });
  }
  const of = (part: (each: (typeof parts)[number]) => number | null): number | null => {
    const values = parts.flatMap((each) => part(each) ?? []);
    return values.length > 0 ? median(values) : null;
  };
  return {
    decode: (ended - began) / Math.max(1, out),
    copy: of(({ copy }) => copy) ?? 0,
    halve: of(({ halve }) => halve),
    draw: of(({ draw }) => draw) ?? 0,
    drawHalf: of(({ drawHalf }) => drawHalf),
  };
}
