import type { ClipFacts } from './frame-source';

/** Whether a film is one picture: nothing in it moves, so it has no rate and no slow motion. */
export const isStill = ({ table }: Pick<ClipFacts, 'table'>): boolean => table.starts.length === 1;
