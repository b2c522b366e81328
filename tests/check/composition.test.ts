import { describe, expect, it } from 'vitest';
import { perspectiveOf } from '../../src/book/perspective.js';
import { planBook } from '../../src/book/plan.js';
import { edges } from '../../src/check/edges.js';
import { heavyCrown } from '../../src/check/heavy-crown.js';
import { union } from '../../src/geometry/boolean/boolean.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import type { Region } from '../../src/geometry/types.js';
import { composePanel } from '../../src/panel/compose.js';
import { bookPieces } from '../../src/panel/pieces.js';
import { PROCESS_LIMITS } from '../../src/process/limits.js';
import { sceneWith } from '../support/scene.js';

/** A plain book with card of our own added to panels by their numbers. */
function bookWith(added: Readonly<Record<number, Region>>) {
  const scene = sceneWith();
  const book = planBook(scene);
  const limits = PROCESS_LIMITS.knife;
  const panels = book.panels.map((plan) => {
    const panel = composePanel(scene, book, plan, new Map(), limits);
    const more = added[plan.number];
    return more ? { ...panel, card: union([panel.card, more]) } : panel;
  });
  return { scene, book, panels, pieces: bookPieces(book, panels), limits };
}

const { eyeX, eyeY } = perspectiveOf(planBook(sceneWith()));
/** A level strip across the windows whose upper edge is seen `y` mm below the eye in panel 1. */
const strip = (y: number, panel: number): Region => {
  const widening = (400 + 20 * (panel - 1)) / 400;
  return rectangle(20, eyeY + y * widening, 150, panel === 1 ? 8 : 4);
};

describe('edges seen together', () => {
  it('are told when they all but coincide', () => {
    const [finding, ...others] = edges(bookWith({ 1: strip(10, 1), 2: strip(9.6, 2) }));
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ rule: 'coinciding-edges', severity: 'hint' });
    expect(finding.measured).toBeGreaterThan(80);
    expect(finding.where).toMatchObject({ piece: 'panel-02' });
    expect(finding.where.y).toBeCloseTo(eyeY + 9.6 * 1.05, 1);
  });

  it('are let be when the deeper one shows well past the other, or is hidden', () => {
    expect(edges(bookWith({ 1: strip(10, 1), 2: strip(3, 2) }))).toEqual([]);
    expect(edges(bookWith({ 1: strip(10, 1), 2: strip(11, 2) }))).toEqual([]);
  });

  it('are told when one just touches the other', () => {
    // A ball of radius 6 whose foot is seen 0.2 mm over the strip before it.
    const ball = circle(eyeX, eyeY + (10 - 0.2 - 6) * 1.05, 6 * 1.05);
    const found = edges(bookWith({ 1: strip(10, 1), 2: ball }));
    expect(found).toMatchObject([{ rule: 'tangent-edges', severity: 'hint' }]);
    expect(found[0].where.x).toBeCloseTo(eyeX, 0);
    const apart = circle(eyeX, eyeY + (10 - 2 - 6) * 1.05, 6 * 1.05);
    expect(edges(bookWith({ 1: strip(10, 1), 2: apart }))).toEqual([]);
    const crossing = circle(eyeX, eyeY + 10 * 1.05, 6 * 1.05);
    expect(edges(bookWith({ 1: strip(10, 1), 2: crossing }))).toEqual([]);
  });
});

describe('a crown on a neck', () => {
  const tree = (trunk: number) =>
    union([rectangle(95 - trunk / 2, 70, trunk, 60), circle(95, 50, 22)]);

  it('is told when it is heavy for it', () => {
    const [finding] = heavyCrown(bookWith({ 1: tree(3) }));
    expect(finding).toMatchObject({ rule: 'heavy-crown', where: { piece: 'panel-01' } });
    expect(finding.where.x).toBeCloseTo(95, 0);
    // The circle's 1,520 mm2 some 22 to 70 mm over the neck, for each of its 3 mm.
    expect(finding.measured).toBeGreaterThan((1520 * 20) / 3);
  });

  it('is let be on a stout trunk', () => {
    expect(heavyCrown(bookWith({ 1: tree(9) }))).toEqual([]);
  });
});
