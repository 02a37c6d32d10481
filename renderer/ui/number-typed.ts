/** A number as the coach types it, point or comma; NaN when there is none. */
export const numberTyped = (text: string): number =>
  text.trim() === '' ? Number.NaN : Number(text.trim().replace(',', '.').replace('−', '-'));
