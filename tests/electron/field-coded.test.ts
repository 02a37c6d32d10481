import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { execa } from 'execa';
import { BufferTarget, EncodedPacket, EncodedVideoPacketSource, Mp4OutputFormat, Output } from 'mediabunny';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tableFromRecord } from '#core/timeline/frame-times-record';
import type { HostFilm } from '#core/host-contract/operations/media-operations';
import { knowFilm } from '#electron/media/known-film';
import { lookAtFilm } from '#electron/media/look-at-film';
import { makeWorkingCopy } from '#electron/media/make-working-copy';
import {
  type AccessUnit,
  codeFields,
  type CodedFrame,
  type FieldCodedFilm,
  joined,
} from '#tests/browser/harness/field-coded-film';
import { type StreamedPicture, transportStream } from '#tests/browser/harness/transport-stream';
import { must } from './a-host';
import { fieldNumbers } from './field-numbers';

const [width, height] = [320, 192];
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'submark-fields-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));
const signal = new AbortController().signal;

/** Eleven frames, 25 a second, some of them shown earlier than they are coded. */
const codingOrder = [0, 3, 1, 2, 6, 4, 5, 7, 10, 8, 9];
function filmOf(first: FieldCodedFilm['first'], as: CodedFrame['as'] | 'mixed'): FieldCodedFilm {
  const role = (place: number): CodedFrame['role'] =>
    place === 0 || place === 7 ? 'instant' : [3, 6, 10].includes(place) ? 'reference' : 'leaf';
  const frames = codingOrder.map(
    (place, n): CodedFrame => ({
      place,
      as: as === 'mixed' ? (n % 3 === 1 ? 'frame' : 'fields') : as,
      role: role(place),
    }),
  );
  return { width, height, first, frames };
}

/** Each access unit in a packet of its own, fields 20 ms apart, as camcorders write them. */
function streamed(units: readonly AccessUnit[]): StreamedPicture[] {
  let decoded = 90_000;
  return units.map(({ data, frame, field }) => {
    const picture = { data, shown: 97_200 + frame.place * 3600 + field * 1800, decoded };
    decoded += frame.as === 'fields' ? 1800 : 3600;
    return picture;
  });
}

async function written(name: string, bytes: Uint8Array): Promise<string> {
  const file = path.join(folder, name);
  await writeFile(file, bytes);
  return file;
}

const look = async (file: string): Promise<HostFilm> =>
  must(
    await lookAtFilm({
      file,
      track: null,
      scratch: path.join(folder, 'look.jpg'),
      signal,
      report: () => undefined,
    }),
  );

/** The numbers in the frames of a film's working copy, which is refused unless its frames are those of the table. */
async function copied(file: string, film: HostFilm, order: 'top' | 'bottom'): Promise<(number | null)[]> {
  const { frameTimes, fields, track } = film;
  const known = must(await knowFilm(file, { frameTimes, fields, track, originalName: 'film' }, {}));
  const target = `${file}.copy`;
  must(
    await makeWorkingCopy({
      ...{ known, target, pieces: `${file}.pieces`, table: tableFromRecord(frameTimes), signal },
      focus: { frame: () => 0, onMove: () => () => undefined },
      report: () => undefined,
      onPiece: () => undefined,
    }),
  );
  return fieldNumbers(target, 0, { width, height, order });
}
const upTo = (count: number): number[] => Array.from({ length: count }, (_, n) => n);

describe('film whose fields are coded apart', () => {
  for (const first of ['top', 'bottom'] as const) {
    for (const as of first === 'top' ? (['fields', 'mixed'] as const) : (['fields', 'mbaff'] as const)) {
      it(`counts each field once, ${first} field first, pictures coded as ${as}`, async () => {
        const { units } = codeFields(filmOf(first, as));
        const file = await written(`${as}-${first}.mts`, transportStream(streamed(units), { timed: true }));
        const film = await look(file);
        expect(film).toMatchObject({ fields: true, width, height });
        expect(film.frameTimes).toMatchObject({ ticksPerSecond: 180_000, gaps: [[3600, 22]] });
        expect(await copied(file, film, first)).toEqual(upTo(22));
      });
    }
  }

  it('counts them once where both lie in one packet, or only the first bears a time', async () => {
    const single = streamed(codeFields(filmOf('top', 'fields')).units);
    const both = single.flatMap((picture, n) =>
      n % 2 === 0
        ? [{ ...picture, data: joined([picture.data, single[n + 1]?.data ?? new Uint8Array()]) }]
        : [],
    );
    const untimed = single.map((picture, n) => (n % 2 === 0 ? picture : { ...picture, shown: null }));
    for (const [name, pictures] of [
      ['both.mts', both],
      ['untimed.mts', untimed],
    ] as const) {
      const file = await written(name, transportStream(pictures));
      const film = await look(file);
      expect(film.frameTimes.gaps, name).toEqual([[3600, 22]]);
      expect(await copied(file, film, 'top'), name).toEqual(upTo(22));
    }
  });

  it('counts them once in MP4, a field or both to a sample', async () => {
    const film = filmOf('bottom', 'fields');
    const { sets, units } = codeFields(film);
    const stream = await written('stream.mts', transportStream(streamed(units)));
    const apart = path.join(folder, 'apart.mp4');
    await execa('ffmpeg', ['-v', 'error', '-y', '-i', stream, '-c', 'copy', apart]);
    const together = await written('together.mp4', await fieldsTogether(sets, units));
    for (const file of [apart, together]) {
      const seen = await look(file);
      expect(tableFromRecord(seen.frameTimes).starts, file).toHaveLength(22);
      expect(seen.fields).toBe(true);
      expect(await copied(file, seen, 'bottom'), file).toEqual(upTo(22));
    }
  });

  it('leaves out a field whose other one is missing, as decoders do, wherever it is', async () => {
    const whole = streamed(codeFields(filmOf('top', 'fields')).units);
    // in coding order: frame 0, 3, 1 …, two fields each
    for (const [missing, gone] of [
      [2, [6, 7]],
      [5, [2, 3]],
      [21, [18, 19]],
    ] as const) {
      const cut = whole.filter((_, n) => n !== missing);
      const file = await written(`without-${missing}.mts`, transportStream(cut));
      const film = await look(file);
      const left = upTo(22).filter((n) => !(gone as readonly number[]).includes(n));
      expect(tableFromRecord(film.frameTimes).starts).toHaveLength(20);
      // pieced together the same way: one copy proves that decoders agree
      if (missing === 5) expect(await copied(file, film, 'top')).toEqual(left);
    }
    const begun = await written('begun-late.mts', transportStream(whole.slice(1)));
    const film = await look(begun);
    expect(await copied(begun, film, 'top')).toEqual(upTo(22).slice(14));
  });
});

/** An MP4 whose samples hold both fields of a frame. */
async function fieldsTogether(
  [sequence, picture]: readonly [Uint8Array, Uint8Array],
  units: readonly AccessUnit[],
): Promise<Uint8Array> {
  const target = new BufferTarget();
  const output = new Output({ format: new Mp4OutputFormat(), target });
  const source = new EncodedVideoPacketSource('avc');
  output.addVideoTrack(source);
  await output.start();
  const set = (bytes: Uint8Array): number[] => [0, bytes.length - 4, ...bytes.subarray(4)];
  const description = Uint8Array.from([1, 77, 0, 30, 0xff, 0xe1, ...set(sequence), 1, ...set(picture)]);
  const meta = {
    decoderConfig: { codec: 'avc1.4d001e', codedWidth: width, codedHeight: height, description },
  };
  for (let n = 0; n < units.length; n += 2) {
    const [one, other] = [units[n], units[n + 1]];
    if (!one || !other) continue;
    const data = joined([one, other].map(({ data: each }) => withLengths(each)));
    const type = one.key ? 'key' : 'delta';
    await source.add(new EncodedPacket(data, type, one.frame.place / 25, 1 / 25), meta);
  }
  await output.finalize();
  return new Uint8Array(target.buffer ?? new ArrayBuffer(0));
}

/** Units with their lengths before them instead of start codes, all of which have four bytes here. */
function withLengths(data: Uint8Array): Uint8Array {
  const bytes = Buffer.from(data);
  for (let at = 0; at < bytes.length; ) {
    const next = bytes.indexOf(Buffer.from([0, 0, 0, 1]), at + 4);
    const end = next < 0 ? bytes.length : next;
    bytes.writeUInt32BE(end - at - 4, at);
    at = end;
  }
  return bytes;
}
