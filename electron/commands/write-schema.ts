import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { drillBookSchema } from '#core/practice/drill-file';
import { practiceSchema } from '#core/practice/practice-schema';
import { trialSchema } from '#core/practice/trial-schema';
import { handoutSchema } from '#core/handout/handout-file';
import { readingsDocumentSchema } from '#core/measures/readings-document';
import { coachSchema } from '#core/swim-file/coach-file';
import { squadSchema } from '#core/swim-file/squad-schema';
import { swimSchema } from '#core/swim-file/swim-schema';

const documents = {
  'swim.schema.json': { title: 'Submark swim file', schema: swimSchema },
  'squad.schema.json': { title: 'Submark squad file', schema: squadSchema },
  'readings.schema.json': {
    title: 'Submark readings, as the readings command writes them',
    schema: readingsDocumentSchema,
  },
  'coach.schema.json': { title: 'Submark coach file', schema: coachSchema },
  'practice.schema.json': { title: 'Submark practice file', schema: practiceSchema },
  'trial.schema.json': { title: 'Submark trial file', schema: trialSchema },
  'handout.schema.json': { title: 'Submark handout file', schema: handoutSchema },
  'drills.schema.json': { title: 'Submark drills file', schema: drillBookSchema },
} as const;

/** The JSON Schemas of docs/, by file name. */
export function schemaTexts(): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(documents).map(([name, { title, schema }]) => [
      name,
      `${JSON.stringify({ title, ...z.toJSONSchema(schema, { io: 'input' }) }, null, 2)}\n`,
    ]),
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const [name, text] of schemaTexts())
    await writeFile(new URL(`../../docs/${name}`, import.meta.url), text);
