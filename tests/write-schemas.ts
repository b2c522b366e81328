import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { PUBLISHED_SCHEMAS } from './support/schemas.js';

const root = path.resolve(import.meta.dirname, '..');
for (const { file, text } of PUBLISHED_SCHEMAS) writeFileSync(path.join(root, file), text);
