import { LAYER_COLOURS, type LayerColours } from '../scene/layer-colours.js';
import type { Process } from './process.js';

/** The process's own stroke colours before ours. */
export function strokeColours({ operations }: Process): LayerColours {
  const own = Object.entries(operations).flatMap(([operation, { stroke }]) =>
    stroke === null ? [] : [[operation, stroke]],
  );
  return { ...LAYER_COLOURS, ...Object.fromEntries(own) };
}
