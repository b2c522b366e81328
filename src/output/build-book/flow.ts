import type { Item, Leaf } from './leaf.js';
import type { Paper } from './style.js';

/** A strip across the page that is never broken. */
export interface Block {
  readonly heightMm: number;
  /** What it shows with its upper edge at `top`. */
  readonly draw: (top: number) => readonly Item[];
  /** It stands on one page with the block after it. */
  readonly keepsNext?: boolean;
  /** Shown again above it where it starts a page of its own, such as the head of a table. */
  readonly head?: Block;
}

export const space = (heightMm: number): Block => ({ heightMm, draw: () => [] });

export const heightOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, { heightMm }) => sum + heightMm, 0);

/** The blocks one below the other, on as many pages as they need. */
export function flow(blocks: readonly Block[], { top, bottom }: Paper): Leaf[] {
  const leaves: Item[][] = [[]];
  let y = top;
  const put = (block: Block): void => {
    leaves[leaves.length - 1].push(...block.draw(y));
    y += block.heightMm;
  };
  blocks.forEach((block, i) => {
    const held = heightOf(together(blocks, i));
    // What no page can hold is broken where the page ends.
    const wanted = held <= bottom - top - (block.head?.heightMm ?? 0) ? held : block.heightMm;
    if (y > top && y + wanted > bottom) {
      leaves.push([]);
      y = top;
      if (block.head) put(block.head);
    }
    put(block);
  });
  return leaves;
}

/** The blocks from `first` that must stand on one page. */
function together(blocks: readonly Block[], first: number): readonly Block[] {
  let end = first;
  while (blocks[end].keepsNext && end + 1 < blocks.length) end++;
  return blocks.slice(first, end + 1);
}
