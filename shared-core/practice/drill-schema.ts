import { z } from 'zod';
import { aids, armPositions, idSchema, sidesUp } from '../swim-file/swim-schema';
import { cautionCodes } from './caution';
import { practiceStrokes, strokePatternSchema } from './practice-schema';

/** A drill of the library, or the coach's own. */
export const drillSchema = z.strictObject({
  id: idSchema,
  name: z.string().min(1).max(120),
  stroke: z.enum(practiceStrokes),
  sideUp: z.enum(sidesUp),
  arms: z.enum(armPositions),
  aids: z.array(z.enum(aids)).max(aids.length),
  /** Goes under water beyond a plain push-off: brings the cautions of underwater repeats. */
  underwater: z.boolean(),
  pattern: strokePatternSchema.nullable(),
  purpose: z.string().min(1).max(1000),
  how: z.string().max(2000),
  watch: z.array(z.string().min(1).max(300)).max(10),
  /** Ids of readings that say something about this drill. */
  readings: z.array(z.string().regex(/^[a-z0-9-]{1,80}$/)).max(20),
  cautions: z.array(z.enum(cautionCodes)).max(cautionCodes.length),
  /** Where the drill comes from, printed beside it. */
  source: z.string().min(1).max(200),
});
export type Drill = z.infer<typeof drillSchema>;
