type Fields = Readonly<Record<string, unknown>>;

/** An object with more fields, its own winning; anything else stays as it is, for the schema to name. */
export function withFields(value: unknown, more: Fields): unknown {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? { ...more, ...value } : value;
}

/** Each entry of a list changed; what is no list stays as it is, for the schema to name. */
export function eachOf(value: unknown, change: (entry: unknown) => unknown): unknown {
  return Array.isArray(value) ? value.map(change) : value;
}
