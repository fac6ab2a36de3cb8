import { z } from 'zod';

/** The parts of JSON Schema (draft 2020-12) that the contract's shapes turn into. */
type Schema = {
  type?: string | string[];
  enum?: unknown[];
  const?: unknown;
  properties?: Record<string, Schema>;
  required?: string[];
  additionalProperties?: Schema | boolean;
  items?: Schema | boolean;
  prefixItems?: Schema[];
  anyOf?: Schema[];
  oneOf?: Schema[];
  allOf?: Schema[];
  default?: unknown;
  minimum?: number;
  maximum?: number;
  $ref?: string;
  $defs?: Record<string, Schema>;
};

/**
 * A shape of the contract on one line, for people at a command line:
 *   { machineId: whole number, takenOn: text, note?: text, wears: "down" | "up" }
 * @param side request: what is sent, where fields with a default may be left out; reply: what comes back
 */
export function shapeText(shape: z.ZodType, side: 'request' | 'reply'): string {
  const schema = z.toJSONSchema(shape, { io: side === 'request' ? 'input' : 'output', reused: 'inline' });
  return schemaText(schema as Schema);
}

function schemaText(schema: Schema): string {
  if (schema.const !== undefined) return JSON.stringify(schema.const);
  if (schema.enum) return schema.enum.map((value) => JSON.stringify(value)).join(' | ');
  const choices = schema.anyOf ?? schema.oneOf;
  if (choices) return choices.map(schemaText).join(' | ');
  if (schema.allOf) return schema.allOf.map(schemaText).join(' & ');
  if (schema.$ref) return schema.$ref === '#' ? '(as above)' : (schema.$ref.split('/').at(-1) ?? schema.$ref);
  if (schema.type === 'object') return objectText(schema);
  if (schema.type === 'array') return listText(schema);
  const types = [schema.type ?? []].flat();
  return types.length === 0 ? 'anything' : types.map((type) => TYPE_TEXT[type] ?? type).join(' | ');
}

function objectText(schema: Schema): string {
  const required = new Set(schema.required ?? []);
  const fields = Object.entries(schema.properties ?? {}).map(
    ([name, field]) => `${name}${required.has(name) ? '' : '?'}: ${schemaText(field)}`,
  );
  if (typeof schema.additionalProperties === 'object')
    fields.push(`[name]: ${schemaText(schema.additionalProperties)}`);
  return fields.length === 0 ? '{}' : `{ ${fields.join(', ')} }`;
}

function listText(schema: Schema): string {
  if (schema.prefixItems) return `[${schema.prefixItems.map(schemaText).join(', ')}]`;
  const item = typeof schema.items === 'object' ? schemaText(schema.items) : 'anything';
  return item.includes(' | ') && !item.startsWith('{') ? `(${item})[]` : `${item}[]`;
}

const TYPE_TEXT: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'number',
  integer: 'whole number',
  boolean: 'true | false',
  null: 'null',
};
