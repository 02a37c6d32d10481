import { pickOf, type Random } from './mutate';

/** What `z.toJSONSchema` writes, as far as our contract uses it. */
interface Schema {
  readonly type?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly allOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly additionalProperties?: Schema | boolean;
  readonly propertyNames?: Schema;
  readonly items?: Schema;
  readonly prefixItems?: readonly Schema[];
  readonly minItems?: number;
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
  readonly pattern?: string;
  readonly format?: string;
  readonly minLength?: number;
}

const ids = ['swim-1', 'swim-2', 'a', 'nobody', 'job-1'];

/** A value that mostly satisfies a JSON Schema, so that what is mutated from it gets past the first check. */
export function valueOfSchema(random: Random, schema: Schema, depth = 0): unknown {
  if (schema.const !== undefined) return schema.const;
  if (schema.enum) return pickOf(random, schema.enum);
  const choices = schema.anyOf ?? schema.oneOf;
  if (choices) return valueOfSchema(random, pickOf(random, choices) ?? {}, depth);
  if (schema.allOf?.[0]) return valueOfSchema(random, schema.allOf[0], depth);
  switch (schema.type) {
    case 'object': {
      const own = Object.entries(schema.properties ?? {}).map(([name, each]) => [
        name,
        valueOfSchema(random, each, depth + 1),
      ]);
      return Object.fromEntries(own);
    }
    case 'array': {
      if (schema.prefixItems) return schema.prefixItems.map((each) => valueOfSchema(random, each, depth + 1));
      const least = schema.minItems ?? 0;
      const length = Math.max(least, depth > 6 ? 0 : Math.floor(random() * 3));
      return Array.from({ length }, () => valueOfSchema(random, schema.items ?? {}, depth + 1));
    }
    case 'number':
    case 'integer': {
      const from =
        schema.minimum ?? (schema.exclusiveMinimum === undefined ? 0 : schema.exclusiveMinimum + 1);
      const value = from + random() * Math.min(100, (schema.maximum ?? from + 100) - from);
      return schema.type === 'integer' ? Math.floor(value) : value;
    }
    case 'boolean':
      return random() < 0.5;
    case 'null':
      return null;
    case 'string':
      if (schema.format === 'date') return '2026-05-14';
      if (schema.format === 'date-time') return '2026-05-14T10:00:00Z';
      if (schema.pattern?.includes('{64}')) return (random() < 0.5 ? 'a' : 'f').repeat(64);
      return schema.pattern
        ? pickOf(random, ids)
        : pickOf(random, ['word', 'swim-1', '/film/x.mp4', 'Ünï 😀']);
    default:
      return null;
  }
}
