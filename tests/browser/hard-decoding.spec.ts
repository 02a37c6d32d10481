import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { codeFields, type CodedFrame } from './harness/field-coded-film';
import { expect, test } from './harness/clip-test';
import { transportStream } from './harness/transport-stream';

const scratch = fileURLToPath(new URL('../../.cache/clips/', import.meta.url));
function written(name: string, bytes: Uint8Array): string {
  mkdirSync(scratch, { recursive: true });
  writeFileSync(scratch + name, bytes);
  return scratch + name;
}

/** Groups of nine in a pyramid, two of the leaves leant on: three frames are put in order, and the stream says nothing of it. */
function pyramid(): Uint8Array {
  const inGroup = [8, 4, 2, 1, 3, 6, 5, 7];
  const places = [0, ...[0, 8, 16, 24].flatMap((from) => inGroup.map((each) => from + each))];
  const frames = places.map((place): CodedFrame => {
    const role = place === 0 ? 'instant' : place % 2 === 0 ? 'reference' : 'leaf';
    return { place, as: 'frame', role };
  });
  const { units } = codeFields({ width: 320, height: 192, first: 'top', still: true, frames });
  return transportStream(
    units.map(({ data, frame }, n) => ({
      data,
      shown: 100_800 + frame.place * 3600,
      decoded: 90_000 + n * 3600,
    })),
  );
}

test('H.264 that does not say how its frames are put in order gives each of them after any jump', async ({
  clips,
}) => {
  const path = written('says-no-order.ts', pyramid());
  const facts = await clips.open(path);
  expect(facts.table.starts).toHaveLength(33);
  for (const first of [2, 17, 5, 32, 1, 30, 11, 3]) {
    // opened anew, so that nothing is held: the jump begins in an empty decoder
    await clips.open(path);
    const seen = await clips.walk([first, 0, 31, first], 0);
    expect(seen.map(({ number }) => number)).toEqual(seen.map(({ frame }) => frame));
  }
});
