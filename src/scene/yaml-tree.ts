import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
} from 'yaml';
import type { Placed } from './positions.js';
import type { ScenePath } from './problem.js';
import { quote } from './words.js';

/** Something wrong that only the tree shows, by its offset in the file. */
export interface TreeProblem {
  readonly path: ScenePath;
  readonly at: number;
  readonly message: string;
}

export interface Tree {
  /** Its value is undefined when aliases made it too large. */
  readonly root: Placed;
  readonly problems: readonly TreeProblem[];
}

/**
 * The document as plain values with their places. An alias shares the value of its anchor, but
 * counts as often as it is used: more than `maxValues` in all is a problem at the alias that goes
 * over it. The document must not be nested so deeply that recursion fails.
 */
export function treeOf(document: Document.Parsed, maxValues: number): Tree {
  const walk = new Walk(maxValues);
  const root = walk.place(document.contents, [], 0);
  return walk.overflow
    ? { root: { value: undefined, at: root.at }, problems: [walk.overflow] }
    : { root, problems: walk.problems };
}

/** An anchored value; undefined while it is still being read. */
type Anchored = { readonly placed: Placed; readonly size: number } | undefined;

class Walk {
  readonly problems: TreeProblem[] = [];
  overflow: TreeProblem | undefined;
  private readonly anchors = new Map<string, Anchored>();
  private values = 0;

  constructor(private readonly maxValues: number) {}

  place(node: Node | null, path: ScenePath, otherwiseAt: number): Placed {
    const at = node?.range?.[0] ?? otherwiseAt;
    if (isAlias(node)) return this.placeAlias(node.source, path, at);
    const before = this.values++;
    const anchor = isScalar(node) || isCollection(node) ? node.anchor : undefined;
    if (anchor) this.anchors.set(anchor, undefined);
    const placed = this.placeValue(node, path, at);
    if (anchor) this.anchors.set(anchor, { placed, size: this.values - before });
    return placed;
  }

  private placeValue(node: Node | null, path: ScenePath, at: number): Placed {
    if (isMap(node)) return this.placeMap(node.items as Pair<Node, Node | null>[], path, at);
    if (isSeq(node)) return this.placeList(node.items as (Node | null)[], path, at);
    return { value: isScalar(node) ? node.value : null, at };
  }

  private placeMap(pairs: readonly Pair<Node, Node | null>[], path: ScenePath, at: number): Placed {
    const children = new Map<string, Placed>();
    // Without a prototype no key of the file can reach one.
    const value: Record<string, unknown> = Object.create(null);
    for (const pair of pairs) {
      const keyAt = pair.key?.range?.[0] ?? at;
      const key =
        isScalar(pair.key) && pair.key.value !== null ? String(pair.key.value) : undefined;
      if (key === undefined) {
        this.report([...path], keyAt, 'a key must be a word before a colon, such as `width: 60`');
        continue;
      }
      if (children.has(key)) {
        this.report([...path, key], keyAt, `${quote(key)} is said twice here; keep one of the two`);
        continue;
      }
      const placed = this.place(pair.value, [...path, key], keyAt);
      children.set(key, { ...placed, keyAt, at: standsByKey(pair.value) ? keyAt : placed.at });
      value[key] = placed.value;
    }
    return { value, at, children };
  }

  private placeList(items: readonly (Node | null)[], path: ScenePath, at: number): Placed {
    const placed = items.map((item, i) => this.place(item, [...path, i], at));
    return { value: placed.map((item) => item.value), at, children: new Map(placed.entries()) };
  }

  private placeAlias(name: string, path: ScenePath, at: number): Placed {
    const nothing = { value: null, at };
    if (!this.anchors.has(name)) {
      this.report(path, at, `*${name} refers to nothing: no &${name} stands before it`);
      return nothing;
    }
    const anchored = this.anchors.get(name);
    if (anchored === undefined) {
      this.report(path, at, `*${name} lies inside &${name} and would repeat itself for ever`);
      return nothing;
    }
    this.values += anchored.size;
    if (this.values > this.maxValues) {
      const message = `with *${name} the file holds more than ${this.maxValues} values; repeat less`;
      this.overflow ??= { path, at, message };
      return nothing;
    }
    return { ...anchored.placed, at };
  }

  private report(path: ScenePath, at: number, message: string): void {
    this.problems.push({ path, at, message });
  }
}

/** A block of lines and an empty value are best pointed at by their key. */
function standsByKey(node: Node | null): boolean {
  if (isCollection(node)) return node.flow !== true;
  return node === null || (isScalar(node) && node.source === '');
}
