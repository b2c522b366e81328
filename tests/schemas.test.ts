import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { PUBLISHED_SCHEMAS } from './support/schemas.js';

describe('the published JSON Schemas', () => {
  it.each(PUBLISHED_SCHEMAS)(
    '$file is as the code has it (npm run schema writes it anew)',
    ({ file, text }) => {
      expect(readFileSync(path.resolve(import.meta.dirname, '..', file), 'utf8')).toBe(text);
    },
  );
});
