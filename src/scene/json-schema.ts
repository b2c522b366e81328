import { z } from 'zod';
import { DEFAULTS } from './defaults.js';
import type { ElementDescription } from './parameter.js';
import { sceneSchema } from './scene-schema.js';

/**
 * The JSON Schema (draft 2020-12) of scene files that may name these elements, for editors: keys,
 * words allowed, defaults, and what each is for. What depends on the file's unit, or on two keys
 * at once, is looked at by `readScene` alone.
 */
export function sceneJsonSchema(elements: readonly ElementDescription[]): object {
  const schema = sceneSchema({
    unit: DEFAULTS.unit,
    panels: undefined,
    stockNames: [],
    elements,
  }).meta({
    title: 'Scene',
    description: 'A layered concertina book: its format, its card and its scenery.',
  });
  return onceInPlace(
    z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'input', reused: 'ref' }),
  );
}

const REFERENCE = /^#\/\$defs\/(.+)$/;
type Node = Readonly<Record<string, unknown>>;

/** What is referred to once is written where it is used; only what elements share keeps a name. */
function onceInPlace(schema: Node): object {
  const definitions = schema.$defs as Record<string, Node>;
  const uses = new Map<string, number>();
  const named = ({ $ref }: Node): string | undefined =>
    typeof $ref === 'string' ? REFERENCE.exec($ref)?.[1] : undefined;
  const each = (value: unknown, visit: (node: Node) => void): void => {
    if (typeof value !== 'object' || value === null) return;
    visit(value as Node);
    for (const child of Object.values(value)) each(child, visit);
  };
  each(schema, (node) => {
    const name = named(node);
    if (name !== undefined) uses.set(name, (uses.get(name) ?? 0) + 1);
  });
  const settle = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(settle);
    if (typeof value !== 'object' || value === null) return value;
    const name = named(value as Node);
    if (name !== undefined && uses.get(name) === 1) {
      const { $ref: _, ...beside } = value as Node;
      return settle({ ...definitions[name], ...beside });
    }
    return Object.fromEntries(Object.entries(value).map(([key, child]) => [key, settle(child)]));
  };
  const shared = Object.entries(definitions).filter(([name]) => (uses.get(name) ?? 0) > 1);
  const { $defs: _, ...rest } = schema;
  const $defs = Object.fromEntries(shared.map(([name, node]) => [name, settle(node)]));
  return { ...(settle(rest) as object), $defs };
}
