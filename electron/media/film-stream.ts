/** The stream specifier of a film track counted from 1: "V" leaves cover pictures and thumbnails out of the count. */
export const filmStream = (track: number): string => `V:${track - 1}`;
