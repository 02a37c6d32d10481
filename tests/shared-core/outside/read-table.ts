import { readFileSync } from 'node:fs';
import { csvParse } from 'd3-dsv';

/** Rows of one of the published tables beside the tests; where they come from stands in their README. */
export const readTable = (name: string): readonly Readonly<Record<string, string>>[] =>
  csvParse(readFileSync(new URL(`tables/${name}.csv`, import.meta.url), 'utf8'));
