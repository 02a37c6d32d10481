/** "0:20", "1:05"; tenths only when there are any. Seconds from 0 up. */
export function clockWords(seconds: number): string {
  const tenths = Math.round(seconds * 10);
  const whole = Math.floor(tenths / 10) % 60;
  const rest = tenths % 10;
  return `${Math.floor(tenths / 600)}:${String(whole).padStart(2, '0')}${rest > 0 ? `.${rest}` : ''}`;
}

/** Seconds from "1:05", "65", "18.4" or "18,4"; null for anything else, zero and below. The inverse of `clockWords`. */
export function secondsOf(text: string): number | null {
  const found = /^\s*(?:(\d{1,3}):([0-5]?\d)|(\d{1,5}))(?:[.,](\d))?\s*$/.exec(text);
  if (!found) return null;
  const [, minutes, seconds, plain, tenths] = found;
  const whole = plain === undefined ? Number(minutes) * 60 + Number(seconds) : Number(plain);
  // counted in tenths, so that 18.4 comes back as 18.4
  const all = (whole * 10 + Number(tenths ?? 0)) / 10;
  return all > 0 ? all : null;
}
