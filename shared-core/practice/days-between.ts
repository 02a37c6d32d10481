/** Whole days from one ISO day to another, negative when the second is earlier; null when either is no day. */
export function daysBetween(from: string, to: string): number | null {
  const days = [dayNumber(from), dayNumber(to)] as const;
  return days[0] === null || days[1] === null ? null : days[1] - days[0];
}

function dayNumber(day: string): number | null {
  const found = /^(\d{4})-(\d\d)-(\d\d)$/.exec(day);
  if (!found) return null;
  const [year, month, date] = found.slice(1).map(Number);
  const at = Date.UTC(year ?? 0, (month ?? 0) - 1, date);
  // a date that does not exist (30 February) rolls over, and no longer reads as it was written
  return new Date(at).toISOString().startsWith(day) ? Math.round(at / 86_400_000) : null;
}
