import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { sceneJsonSchema } from '../../src/scene/json-schema.js';
import { elements } from './elements.js';

const schema = sceneJsonSchema(elements) as {
  $schema: string;
  properties: Record<string, { description?: string; default?: unknown }>;
};
const validator = z.fromJSONSchema(schema as unknown as z.core.JSONSchema.JSONSchema);
const passes = (text: string): boolean => validator.safeParse(parse(text)).success;

describe('sceneJsonSchema', () => {
  it('is draft 2020-12, as plain data', () => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });

  it('describes every key, and every key of every element', () => {
    const undescribed: string[] = [];
    const walk = (node: unknown, path: string): void => {
      if (typeof node !== 'object' || node === null) return;
      for (const [key, value] of Object.entries(node)) {
        if (key === 'properties') {
          for (const [name, child] of Object.entries(value as Record<string, object>)) {
            // What elements share is described where it is defined.
            if (!('$ref' in child) && !('description' in child) && !('const' in child))
              undescribed.push(`${path}/${name}`);
          }
        }
        walk(value, `${path}/${key}`);
      }
    };
    walk(schema, '');
    expect(undescribed).toEqual([]);
    expect(JSON.stringify(schema)).toContain('Depth of its bumps.');
  });

  it('holds the defaults, lengths with their unit', () => {
    expect(schema.properties.panels!.default).toBe(5);
    expect(schema.properties.spacing!.default).toBe('20 mm');
    expect(JSON.stringify(schema)).toContain('"default":"0.5 mm"');
    expect(JSON.stringify(schema)).toContain('"enum":["clipped","loose"]');
  });

  it.each([
    '{}',
    'title: Lock\npanels: 4\nscenery: [hedge]',
    'unit: in\npanel: { width: 8, height: 5 1/2 }\nspacing: 3/4"',
    'window: [{ shape: arch }, { head: 3 cm }]\ncards: ink\nspine: { angle: 80 }',
    'stocks: { ink: { colour: "#20243c", sheet: { width: 305, height: 305 } } }\ncards: [ink, plum]',
    'scenery:\n  - element: hedge\n    panels: 2 to 4\n    at: middle\n    height: { from: 30, to: 50% }\n    form: loose\n    stems: { from: 1, to: 3 }',
  ])('passes a good scene: %j', (text) => {
    expect(passes(text)).toBe(true);
  });

  it.each([
    '[]',
    'titel: x',
    'title: 1984',
    'panels: 1',
    'panels: 40',
    'panel: { width: -5 }',
    'panel: { width: 0 }',
    'spacing: 2 ells',
    'window: { step: -1 }',
    'stocks: { ink: {} }',
    'scenery: [hegde]',
    'scenery: [{ element: hegde }]',
    'scenery: [{ id: a }]',
    'scenery: [{ element: tree, form: loose }]',
    'scenery: [{ element: hedge, side: left }]',
    'scenery: [{ element: hedge, at: midle }]',
    'scenery: [{ element: hedge, bumps: { from: 1 } }]',
    'scenery: [{ element: hedge, form: lose }]',
  ])('fails a bad scene: %j', (text) => {
    expect(passes(text)).toBe(false);
  });
});
