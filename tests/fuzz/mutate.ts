/** Values that have broken programs before: wrong kinds, ends of ranges, names that leave a folder, names of objects. */
const hostile: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  1.5,
  2 ** 31,
  2 ** 53,
  1e308,
  -1e-308,
  '',
  ' ',
  '..',
  '../../etc/passwd',
  '..\\..\\windows',
  'CON',
  'a\0b',
  '%2e%2e%2f',
  '/',
  'C:\\',
  '\u202egpj.exe',
  '😀'.repeat(40),
  'x'.repeat(70_000),
  '__proto__',
  'constructor',
  '2026-02-30',
  'NaN',
  [],
  {},
  [[[[[[[[[[]]]]]]]]]],
  { toString: 1 },
];

export type Random = () => number;
const asText = (value: unknown): string =>
  typeof value === 'string' ? value : (JSON.stringify(value) ?? '');
export const pickOf = <T>(random: Random, list: readonly T[]): T | undefined =>
  list[Math.floor(random() * list.length)];

function deepNest(depth: number): unknown {
  let value: unknown = 1;
  for (let i = 0; i < depth; i++) value = i % 2 === 0 ? [value] : { a: value };
  return value;
}

/** A copy of a JSON value with one place changed: replaced, removed, doubled, nudged or renamed. */
export function mutateValue(random: Random, value: unknown): unknown {
  if (random() < 0.01) return deepNest(2000);
  if (typeof value !== 'object' || value === null || random() < 0.12) {
    if (typeof value === 'number' && random() < 0.5)
      return value + (pickOf(random, [-1, 1, 0.5, 1e9, -1e9]) ?? 1);
    if (typeof value === 'string' && random() < 0.4) {
      const at = Math.floor(random() * (value.length + 1));
      return value.slice(0, at) + asText(pickOf(random, hostile)) + value.slice(at + 1);
    }
    return structuredClone(pickOf(random, hostile));
  }
  if (Array.isArray(value)) {
    const copy = [...(value as unknown[])];
    const at = Math.floor(random() * Math.max(1, copy.length));
    const roll = random();
    if (copy.length === 0 || roll < 0.1) copy.push(structuredClone(pickOf(random, hostile)));
    else if (roll < 0.2) copy.splice(at, 1);
    else if (roll < 0.3) copy.splice(at, 0, copy[at], copy[at]);
    else copy[at] = mutateValue(random, copy[at]);
    return copy;
  }
  const entries = Object.entries(value);
  const at = Math.floor(random() * Math.max(1, entries.length));
  const roll = random();
  const chosen = entries[at];
  if (!chosen || roll < 0.06) entries.push([asText(pickOf(random, hostile)).slice(0, 60), 1]);
  else if (roll < 0.14) entries.splice(at, 1);
  else if (roll < 0.18) entries[at] = ['__proto__', chosen[1]];
  else entries[at] = [chosen[0], mutateValue(random, chosen[1])];
  return Object.fromEntries(entries);
}

/** Text with a piece cut, doubled, overwritten or put somewhere else. */
export function mutateText(random: Random, text: string): string {
  const at = Math.floor(random() * (text.length + 1));
  const length = Math.floor(random() ** 3 * (text.length + 1));
  const piece = text.slice(at, at + length);
  switch (Math.floor(random() * 5)) {
    case 0:
      return text.slice(0, at);
    case 1:
      return text.slice(0, at) + text.slice(at + length);
    case 2:
      return text.slice(0, at) + piece + piece + text.slice(at + length);
    case 3:
      return text.slice(0, at) + asText(pickOf(random, hostile)) + text.slice(at + 1);
    default:
      return text.slice(0, at) + String.fromCharCode(Math.floor(random() * 0x1_0000)) + text.slice(at + 1);
  }
}

/** Bytes with a few of them changed, most of them in the first part, where headers are; or cut, or with a piece doubled. */
export function mutateBytes(random: Random, bytes: Uint8Array, headBytes: number): Uint8Array {
  const copy = Uint8Array.from(bytes);
  const roll = random();
  if (roll < 0.1) return copy.subarray(0, Math.floor(random() * copy.length));
  if (roll < 0.2) {
    const at = Math.floor(random() * Math.min(headBytes, copy.length));
    const length = Math.floor(random() * 64);
    return Uint8Array.from([...copy.subarray(0, at + length), ...copy.subarray(at)]);
  }
  const changes = 1 + Math.floor(random() ** 2 * 12);
  for (let i = 0; i < changes; i++) {
    const at = Math.floor(random() * Math.min(random() < 0.9 ? headBytes : copy.length, copy.length));
    const now = copy[at] ?? 0;
    copy[at] = pickOf(random, [0, 1, 0x7f, 0x80, 0xff, now ^ (1 << Math.floor(random() * 8)), now + 1]) ?? 0;
    // lengths and counts are four bytes long: fill whole ones now and then
    if (random() < 0.2) copy.fill(pickOf(random, [0, 0xff, 0x7f]) ?? 0, at, at + 4);
  }
  return copy;
}
