import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parseSwim } from '#core/swim-file/swim-file';
import type { Swim } from '#core/swim-file/swim-schema';

/** The swims of a library that are not samples. */
export function addedSwims(library: string): Swim[] {
  return readdirSync(path.join(library, 'swims'))
    .filter((each) => !each.startsWith('sample-'))
    .map((each) => {
      const parsed = parseSwim(readFileSync(path.join(library, 'swims', each, 'swim.json'), 'utf8'));
      if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
      return parsed.value;
    });
}
