import type { Point, Region } from '../../geometry/types.js';
import { type LimbNode, limb } from '../limb.js';

/**
 * A place where a branch ends or forks, as planned. `load` is what it carries there itself, in any
 * unit of thickness to the power D; forks carry what their children carry.
 */
export interface Joint extends Point {
  readonly children: readonly Joint[];
  readonly load: number;
  /** Where the wood runs on its way here from the joint before. */
  readonly way: readonly Point[];
}

/** One stretch of wood between two joints, as drawn. Lengths in mm. */
export interface Branch {
  readonly id: number;
  /** Index of the branch it grows from; -1 for the trunk. */
  readonly parent: number;
  readonly thickness: number;
  /** True when the rule asked for less than the smallest web. */
  readonly held: boolean;
  /** From its fork to its end. */
  readonly points: readonly Point[];
}

/** A limb as thin as the smallest web would be lost where rounding takes a hair off it. */
export const WOOD_SPARE = 1.1;

/**
 * The branches of a tree whose trunk is `trunk` mm thick, trunk first, parents before children.
 * Every fork keeps d^D = sum of d_i^D (Leonardo's rule; C. Eloy, Phys. Rev. Lett. 107, 258101,
 * 2011), except where a branch is held at the smallest web.
 */
export function branchTable(
  foot: Point,
  first: Joint,
  trunk: number,
  exponent: number,
  smallestWeb: number,
): Branch[] {
  const table: Branch[] = [];
  const whole = carried(first);
  const add = (from: Point, joint: Joint, parent: number): void => {
    const wanted = trunk * (carried(joint) / whole) ** (1 / exponent);
    const id = table.length;
    table.push({
      id,
      parent,
      thickness: Math.max(smallestWeb, wanted),
      held: wanted < smallestWeb,
      points: [from, ...joint.way, { x: joint.x, y: joint.y }],
    });
    for (const child of joint.children) add(joint, child, id);
  };
  add(foot, first, -1);
  return table;
}

const carried = (joint: Joint): number =>
  joint.load + joint.children.reduce((sum, child) => sum + carried(child), 0);

/** The branches that nothing grows from. */
export function twigsOf(table: readonly Branch[]): Branch[] {
  const parents = new Set(table.map((b) => b.parent));
  return table.filter((b) => !parents.has(b.id));
}

/** The branches as wood: the thickest way on from each fork is one limb, the others spring from it. */
export function wood(table: readonly Branch[]): Region {
  const byId = new Map(table.map((b) => [b.id, b]));
  const heir = new Map<number, number>();
  for (const b of table) {
    const rival = heir.get(b.parent);
    if (rival === undefined || byId.get(rival)!.thickness < b.thickness) heir.set(b.parent, b.id);
  }
  const contours = table
    .filter((b) => heir.get(b.parent) !== b.id || b.parent === -1)
    .map((b) => limb(limbNodes(byId, heir, b)));
  return { contours };
}

function limbNodes(
  table: Map<number, Branch>,
  heir: Map<number, number>,
  first: Branch,
): LimbNode[] {
  const nodes: LimbNode[] = [];
  const parent = table.get(first.parent);
  if (parent) {
    // Starting down in the parent makes the limb leave it along its own line.
    const back = parent.points[parent.points.length - 2];
    const from = first.points[0];
    const f = Math.min(
      1,
      (first.thickness * 1.5) / Math.max(1e-6, Math.hypot(back.x - from.x, back.y - from.y)),
    );
    nodes.push({
      x: from.x + f * (back.x - from.x),
      y: from.y + f * (back.y - from.y),
      thickness: first.thickness,
    });
  }
  let branch: Branch | undefined = first;
  while (branch) {
    const next: Branch | undefined = table.get(heir.get(branch.id) ?? -1);
    const b: Branch = branch;
    const end = next ? (b.thickness + next.thickness) / 2 : b.thickness;
    b.points.forEach((p, i) => {
      if (i === 0 && nodes.length > 1) return;
      const t = i / (b.points.length - 1);
      nodes.push({ ...p, thickness: b.thickness + (end - b.thickness) * t * t });
    });
    branch = next;
  }
  return nodes;
}
