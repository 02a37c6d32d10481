import { z } from 'zod';

/** Words for positions that trials compare and a swim's card has no field for. Our own lists. */
export const headPositions = ['low', 'level', 'high'] as const;
export const hipPositions = ['low', 'level', 'high'] as const;
export const depths = ['surface', 'shallow', 'middle', 'deep'] as const;

/** Null: not said. `head`: against the line of arms and shoulders; `hips`: against the line of shoulders and feet. */
export const conditionTagsSchema = z.strictObject({
  head: z.enum(headPositions).nullable(),
  hips: z.enum(hipPositions).nullable(),
  depth: z.enum(depths).nullable(),
  free: z.array(z.string().min(1).max(60)).max(10),
});
export type ConditionTags = z.infer<typeof conditionTagsSchema>;

export const noTags: ConditionTags = { head: null, hips: null, depth: null, free: [] };
