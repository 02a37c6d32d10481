/** A reading's id without the part of the swim it is read over: events of a kind, or the glide. */
export const withoutPlace = (id: string): string => id.replace(/-at-.*$|-in-glide$/, '');
