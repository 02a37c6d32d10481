/** A fresh id, fit for swim files and folder names. */
export function makeId(): string {
  return crypto.randomUUID();
}
