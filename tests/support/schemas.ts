import {
  FAMILIES,
  manifestJsonSchema,
  processJsonSchema,
  sceneJsonSchema,
} from '../../src/index.js';

const asText = (schema: object): string => `${JSON.stringify(schema, null, 2)}\n`;

/** The JSON Schemas that are kept on disk, for editors and for readers of the manifest. */
export const PUBLISHED_SCHEMAS: readonly { readonly file: string; readonly text: string }[] = [
  { file: 'src/scene/scene.schema.json', text: asText(sceneJsonSchema(FAMILIES)) },
  { file: 'src/process/process.schema.json', text: asText(processJsonSchema()) },
  { file: 'src/output/manifest.schema.json', text: asText(manifestJsonSchema()) },
];
