/** Text that is equal for equal content, whatever the order of keys. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, part: unknown) =>
    part !== null && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([p], [q]) => (p < q ? -1 : 1)))
      : part,
  );
}

/** Whether two versions of a document say the same; when they were last saved does not count. */
export function sayTheSame<T extends { readonly changedAt: string }>(one: T, other: T): boolean {
  return canonical({ ...one, changedAt: '' }) === canonical({ ...other, changedAt: '' });
}
