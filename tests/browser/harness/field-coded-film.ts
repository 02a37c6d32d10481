import { paintCode } from './picture-code';

/**
 * A small maker of H.264 whose pictures are coded as fields or frames at will (PAFF, MBAFF), which the encoders at hand
 * can't do. Every macroblock holds its samples as they are (I_PCM), so that what comes out is known exactly. Syntax: ITU-T
 * H.264, 7.3.
 */
export interface CodedFrame {
  /** Place in showing order, from 0. Its first field carries the number 2 × place in its lines, the second one more. */
  readonly place: number;
  /** Two field pictures, one frame picture, or a frame picture whose macroblock pairs are fields by turns. */
  readonly as: 'fields' | 'frame' | 'mbaff';
  /** An instant refresh, a picture that others may lean on, or one that none does. */
  readonly role: 'instant' | 'reference' | 'leaf';
}

export interface FieldCodedFilm {
  /** Multiples of 16 and 32. */
  readonly width: number;
  readonly height: number;
  /** The field shown first. */
  readonly first: 'top' | 'bottom';
  /** In coding order. */
  readonly frames: readonly CodedFrame[];
  /** Nothing moves between the fields of a frame: both carry its place as their number. */
  readonly still?: boolean;
  /** Whether the sequence says how far pictures are put in order; most cameras leave it out. */
  readonly saysReordering?: number;
}

/** One access unit with start codes: a frame picture or one field. */
export interface AccessUnit {
  readonly data: Uint8Array;
  readonly frame: CodedFrame;
  /** Which field of its frame, 0 or 1; 0 for a frame picture. */
  readonly field: 0 | 1;
  readonly key: boolean;
}

const frameNumBits = 4;
const orderBits = 8;

/** Sequence and picture parameter sets, and the access units, in coding order. */
export function codeFields(film: FieldCodedFilm): {
  readonly sets: readonly [Uint8Array, Uint8Array];
  readonly units: readonly AccessUnit[];
} {
  const sets = [sequenceSet(film), pictureSet()] as const;
  const units: AccessUnit[] = [];
  let frameNum = 0;
  let idrs = 0;
  let lastWasReference = false;
  /** Order counts begin anew with each instant refresh. */
  let base = 0;
  for (const frame of film.frames) {
    const instant = frame.role === 'instant';
    frameNum = instant ? 0 : lastWasReference ? (frameNum + 1) % 2 ** frameNumBits : frameNum;
    lastWasReference = frame.role !== 'leaf';
    if (instant) {
      idrs += 1;
      base = frame.place;
    }
    const both = paintFrame(film, frame.place);
    const order = 2 * (frame.place - base);
    const slice = (kind: SliceKind): Uint8Array =>
      unitOf(sliceOf(film, frame, kind), instant && !kind.second, frame);
    const common = { frameNum, idr: idrs % 2, second: false };
    const head = instant ? [...sets] : [];
    if (frame.as === 'fields') {
      for (const field of [0, 1] as const) {
        const bottom = (film.first === 'bottom') === (field === 0);
        const kind = {
          ...common,
          lines: fieldOf(both, film, bottom),
          bottom,
          order: order + field,
          second: field === 1,
        };
        units.push({
          data: joined([delimiter, ...(field === 0 ? head : []), slice(kind)]),
          frame,
          field,
          key: instant && field === 0,
        });
      }
    } else {
      const bottomLater = film.first === 'top' ? 1 : -1;
      const kind = {
        ...common,
        lines: both,
        bottom: null,
        order: order + (bottomLater < 0 ? 1 : 0),
        bottomLater,
      };
      units.push({ data: joined([delimiter, ...head, slice(kind)]), frame, field: 0, key: instant });
    }
  }
  return { sets, units };
}

interface SliceKind {
  readonly lines: Uint8Array;
  /** Which field; null for a frame. */
  readonly bottom: boolean | null;
  readonly frameNum: number;
  readonly idr: number;
  readonly order: number;
  readonly second: boolean;
  readonly bottomLater?: number;
}

function sliceOf(film: FieldCodedFilm, { as, role }: CodedFrame, kind: SliceKind): number[] {
  const { width } = film;
  const instant = role === 'instant' && !kind.second;
  const intra = instant;
  const bits = new BitWriter();
  bits.golomb(0);
  bits.golomb(intra ? 7 : 5);
  bits.golomb(0);
  bits.put(kind.frameNum, frameNumBits);
  bits.put(kind.bottom === null ? 0 : 1, 1);
  if (kind.bottom !== null) bits.put(kind.bottom ? 1 : 0, 1);
  if (instant) bits.golomb(kind.idr);
  bits.put(kind.order & (2 ** orderBits - 1), orderBits);
  if (kind.bottom === null) bits.signedGolomb(kind.bottomLater ?? 0);
  if (!intra) {
    bits.put(0, 1);
    bits.put(0, 1);
  }
  if (role !== 'leaf') bits.put(0, instant ? 2 : 1);
  bits.signedGolomb(0);
  bits.golomb(1);
  const across = width / 16;
  const down = kind.lines.length / width / 16;
  const pairs = kind.bottom === null && film.frames.some((each) => each.as === 'mbaff');
  for (let n = 0; n < across * down; n++) {
    const pair = n >> 1;
    const asFields = as === 'mbaff' && pair % 2 === 1;
    const x = (pairs ? pair % across : n % across) * 16;
    const top = pairs ? Math.floor(pair / across) * 32 : Math.floor(n / across) * 16;
    const [y, step] = !pairs ? [top, 1] : asFields ? [top + (n & 1), 2] : [top + (n & 1) * 16, 1];
    if (!intra) bits.golomb(0);
    if (pairs && n % 2 === 0) bits.put(asFields ? 1 : 0, 1);
    bits.golomb(intra ? 25 : 30);
    bits.align(0);
    for (let line = 0; line < 16; line++)
      bits.bytes(kind.lines.subarray((y + line * step) * width + x, (y + line * step) * width + x + 16));
    bits.bytes(new Uint8Array(128).fill(128));
  }
  bits.put(1, 1);
  bits.align(0);
  return bits.done();
}

/** A picture whose even lines carry one number and whose odd lines another, as the two moments of its fields do. */
function paintFrame({ width, height, first, still = false }: FieldCodedFilm, place: number): Uint8Array {
  const lines = new Uint8Array(width * height);
  for (const field of [0, 1]) {
    const picture = new Uint8Array(width * height).fill(90);
    paintCode(picture, width, height, still ? place : 2 * place + field);
    const odd = (first === 'bottom') === (field === 0) ? 1 : 0;
    for (let y = odd; y < height; y += 2) lines.set(picture.subarray(y * width, (y + 1) * width), y * width);
  }
  return lines;
}

function fieldOf(lines: Uint8Array, { width, height }: FieldCodedFilm, bottom: boolean): Uint8Array {
  const field = new Uint8Array((width * height) / 2);
  for (let y = 0; y < height / 2; y++) {
    const from = (2 * y + (bottom ? 1 : 0)) * width;
    field.set(lines.subarray(from, from + width), y * width);
  }
  return field;
}

function sequenceSet({ width, height, frames, saysReordering }: FieldCodedFilm): Uint8Array {
  const bits = new BitWriter();
  bits.put(77, 8);
  bits.put(0, 8);
  bits.put(30, 8);
  bits.golomb(0);
  bits.golomb(frameNumBits - 4);
  bits.golomb(0);
  bits.golomb(orderBits - 4);
  bits.golomb(2);
  bits.put(0, 1);
  bits.golomb(width / 16 - 1);
  bits.golomb(height / 32 - 1);
  bits.put(0, 1);
  bits.put(frames.some(({ as }) => as === 'mbaff') ? 1 : 0, 1);
  bits.put(1, 1);
  bits.put(0, 1);
  bits.put(1, 1);
  // usability information: the clock, and perhaps how far pictures are put in order
  bits.put(0, 4);
  bits.put(1, 1);
  bits.put(1, 32);
  bits.put(50, 32);
  bits.put(1, 1);
  bits.put(0, 3);
  bits.put(saysReordering === undefined ? 0 : 1, 1);
  if (saysReordering !== undefined) {
    bits.put(1, 1);
    for (const each of [0, 0, 10, 10, saysReordering, Math.max(2, saysReordering)]) bits.golomb(each);
  }
  bits.put(1, 1);
  bits.align(0);
  return nal(0x67, bits.done());
}

function pictureSet(): Uint8Array {
  const bits = new BitWriter();
  bits.golomb(0);
  bits.golomb(0);
  bits.put(0, 1);
  // frames say when their bottom field comes
  bits.put(1, 1);
  bits.golomb(0);
  bits.golomb(0);
  bits.golomb(0);
  bits.put(0, 3);
  bits.signedGolomb(0);
  bits.signedGolomb(0);
  bits.signedGolomb(0);
  bits.put(1, 1);
  bits.put(0, 2);
  bits.put(1, 1);
  bits.align(0);
  return nal(0x68, bits.done());
}

const unitOf = (slice: readonly number[], instant: boolean, { role }: CodedFrame): Uint8Array =>
  nal(instant ? 0x65 : role === 'leaf' ? 0x01 : 0x41, slice);

/** A unit with its start code, with a 3 wherever its content would look like one. */
function nal(header: number, content: readonly number[]): Uint8Array {
  const out = [0, 0, 0, 1, header];
  let zeros = 0;
  for (const byte of content) {
    if (zeros >= 2 && byte <= 3) {
      out.push(3);
      zeros = 0;
    }
    out.push(byte);
    zeros = byte === 0 ? zeros + 1 : 0;
  }
  return Uint8Array.from(out);
}

const delimiter = nal(0x09, [0xf0]);

export function joined(parts: readonly Uint8Array[]): Uint8Array {
  return new Uint8Array(Buffer.concat(parts));
}

class BitWriter {
  private readonly out: number[] = [];
  private filled = 0;
  put(value: number, count: number): void {
    for (let n = count - 1; n >= 0; n--) {
      if (this.filled % 8 === 0) this.out.push(0);
      const bit = Math.floor(value / 2 ** n) % 2;
      const last = this.out.length - 1;
      this.out[last] = (this.out[last] ?? 0) | (bit << (7 - (this.filled % 8)));
      this.filled += 1;
    }
  }
  /** Exp-Golomb code (9.1). */
  golomb(value: number): void {
    const length = Math.floor(Math.log2(value + 1));
    this.put(0, length);
    this.put(value + 1, length + 1);
  }
  signedGolomb(value: number): void {
    this.golomb(value > 0 ? 2 * value - 1 : -2 * value);
  }
  align(bit: number): void {
    while (this.filled % 8 !== 0) this.put(bit, 1);
  }
  bytes(bytes: Uint8Array): void {
    this.out.push(...bytes);
    this.filled += 8 * bytes.length;
  }
  done(): number[] {
    return this.out;
  }
}
