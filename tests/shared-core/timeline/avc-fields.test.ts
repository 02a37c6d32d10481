import { describe, expect, it } from 'vitest';
import { createFieldPairing, type PacketPart } from '#core/timeline/avc-fields';
import { codeFields, type CodedFrame, joined } from '../../browser/harness/field-coded-film';

const frame = (place: number, as: CodedFrame['as'], role: CodedFrame['role']): CodedFrame => ({
  place,
  as,
  role,
});
/** Two leaves one after another have the same frame number: only the order tells whose field is whose. */
const frames = [
  frame(0, 'fields', 'instant'),
  frame(3, 'fields', 'reference'),
  frame(1, 'fields', 'leaf'),
  frame(2, 'fields', 'leaf'),
  frame(4, 'frame', 'reference'),
];
const { sets, units } = codeFields({ width: 32, height: 32, first: 'top', frames });
const packets = units.map(({ data }) => data);

function partsOf(seen: readonly Uint8Array[], record: Uint8Array | null = null): readonly PacketPart[] {
  const pairing = createFieldPairing(record);
  for (const packet of seen) pairing.see(packet);
  return pairing.end();
}
const pair: readonly PacketPart[] = ['first-field', 'second-field'];

describe('fields of H.264 put together', () => {
  it('are two to a frame, in the order they are coded', () => {
    expect(partsOf(packets)).toEqual([...pair, ...pair, ...pair, ...pair, 'frame']);
  });

  it('make one frame where both lie in one packet', () => {
    const both = [0, 2, 4, 6].map((n) => joined(packets.slice(n, n + 2)));
    expect(partsOf(both)).toEqual(['frame', 'frame', 'frame', 'frame']);
  });

  it('make none without their other one', () => {
    const without = packets.filter((_, n) => n !== 3);
    expect(partsOf(without)).toEqual([...pair, 'none', ...pair, ...pair, 'frame']);
    expect(partsOf(packets.slice(0, 3))).toEqual([...pair, 'none']);
  });

  it('are told by parameter sets outside the packets too, and never by nothing', () => {
    const bare = packets.slice(2);
    expect(partsOf(bare)).toEqual(bare.map(() => 'none'));
    expect(partsOf(bare, joined(sets))).toEqual([...pair, ...pair, ...pair, 'frame']);
    expect(partsOf([new Uint8Array(), new Uint8Array(9)])).toEqual(['none', 'none']);
  });
});
