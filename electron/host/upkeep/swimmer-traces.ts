/** What tells a swimmer in a text: the id of the squad, the ids of the swims, and the name as a word of its own. */
export interface Traces {
  readonly swimmerId: string;
  readonly name: string;
  readonly swimIds: ReadonlySet<string>;
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** The text standing alone: "Ada" is not in "Adam"; runs of spaces, dashes and underscores between parts are alike. */
export function wordPattern(text: string, flags = 'giu'): RegExp {
  const loose = text
    .trim()
    .split(/[\s_-]+/)
    .map(escaped)
    .join('[\\s_-]+');
  return new RegExp(`(?<![\\p{L}\\p{N}])${loose}(?![\\p{L}\\p{N}])`, flags);
}

export type TraceKind = 'id' | 'swim' | 'name';

/** A look for a swimmer's traces in any number of texts. Ids of the squad are looked for as quoted values. */
export function traceFinder({ swimmerId, name, swimIds }: Traces): (text: string) => TraceKind | null {
  const id = `"${swimmerId}"`;
  const named = name.trim() === '' ? null : wordPattern(name, 'iu');
  // one pass over the words of a text, whatever the number of swims
  const words = /[A-Za-z0-9_-]+/g;
  return (text) => {
    if (text.includes(id)) return 'id';
    if (swimIds.size > 0) for (const [word] of text.matchAll(words)) if (swimIds.has(word)) return 'swim';
    return named?.test(text) ? 'name' : null;
  };
}
