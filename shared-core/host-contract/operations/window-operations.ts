import { z } from 'zod';

const commandId = z.string().min(1).max(80);

/** A command of the page as the window's menu shows it. */
const menuCommandSchema = z.strictObject({
  id: commandId,
  label: z.string().min(1).max(120),
  /** Its first key as a tinykeys pattern, e.g. "$mod+z"; null when it has none. The page itself reads its keys. */
  key: z.string().max(40).nullable(),
  enabled: z.boolean(),
});

/** What the page tells the window that holds it, for the parts of a window no page can draw. */
const windowFaceSchema = z.strictObject({
  /** The look of the page: whether it is dark, and the colour behind everything. */
  look: z.strictObject({ dark: z.boolean(), ground: z.string().regex(/^#[0-9a-f]{6}$/) }),
  /** The commands that can be given just now, in the groups of the key sheet. */
  groups: z
    .array(
      z.strictObject({ heading: z.string().min(1).max(80), commands: z.array(menuCommandSchema).max(200) }),
    )
    .max(20),
  /** Long work of the page itself: share done of each piece, 0 to 1, or null where it can't be told. */
  work: z.array(z.number().min(0).max(1).nullable()).max(20),
});
export type WindowFace = z.infer<typeof windowFaceSchema>;

/** What the window wants of its page. */
const windowRequestSchema = z.discriminatedUnion('kind', [
  /** A menu item was chosen: the page runs the command as its button or key would. */
  z.strictObject({ kind: z.literal('command'), number: z.number().int(), id: commandId }),
  /** Files were opened with Submark: clips or bundles, by their whole paths. */
  z.strictObject({
    kind: z.literal('files'),
    number: z.number().int(),
    paths: z.array(z.string().min(1).max(4096)).max(1000),
  }),
  /** Submark is about to end: the page saves what is unsaved before it asks again. */
  z.strictObject({ kind: z.literal('save'), number: z.number().int() }),
]);
export type WindowRequest = z.infer<typeof windowRequestSchema>;

/** Between a page and the window that holds it; `not-allowed` in a browser, whose window is its own. */
export const windowOperations = {
  'window/show': { input: windowFaceSchema, output: z.strictObject({}) },
  /**
   * Waits for what the window wants next. Answers all requests with a number above `after`: those up to it are done. A page
   * that was loaded again begins at 0 and gets what its predecessor did not finish.
   */
  'window/next': {
    input: z.strictObject({ after: z.number().int().nonnegative() }),
    output: z.strictObject({ requests: z.array(windowRequestSchema) }),
  },
} as const;
