/** What of a swim can be saved from the Export dialog. */
export const exportParts = [
  'stills',
  'sheet',
  'fan',
  'readings-csv',
  'events-csv',
  'landmarks-csv',
  'readings-json',
  'events-vtt',
  'bundle',
] as const;
export type ExportPart = (typeof exportParts)[number];

export interface ExportChoice {
  readonly parts: ReadonlySet<ExportPart>;
  /** Frames of the stills, from 0. */
  readonly frames: readonly number[];
  /** Stills are close to the swimmer. */
  readonly keepInView: boolean;
  readonly sheetPictures: 8 | 12;
  /** Ids of the readings on stills and sheet. */
  readonly readings: readonly string[];
  /** Frame in the cycle of sheet and fan. */
  readonly cycleAt: number;
}

/** Parts that show the swimmer. A fan is lines alone, and data are numbers. */
export const showsSwimmer: ReadonlySet<ExportPart> = new Set(['stills', 'sheet', 'bundle']);

/**
 * Frames as the coach writes them: "63, 71-73", counted from 1 and within `count`. Null when something in it is no frame;
 * empty for an empty text. Each frame once, in order.
 */
export function framesFromWords(words: string, count: number): readonly number[] | null {
  const frames = new Set<number>();
  for (const part of words.split(/[,;\s]+/).filter(Boolean)) {
    const found = /^(\d{1,7})(?:[-–](\d{1,7}))?$/.exec(part);
    const from = Number(found?.[1]);
    const to = found?.[2] === undefined ? from : Number(found[2]);
    if (!found || from < 1 || to < from || to > count) return null;
    for (let frame = from; frame <= to; frame++) frames.add(frame - 1);
  }
  return [...frames].sort((a, b) => a - b);
}

/** The same the other way round: frames from 0 as words, counted from 1. */
export const framesInWords = (frames: readonly number[]): string =>
  frames.map((frame) => frame + 1).join(', ');
