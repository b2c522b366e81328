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
  return z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'input', reused: 'inline' });
}
