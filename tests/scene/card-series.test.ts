import { describe, expect, it } from 'vitest';
import { cardSeries } from '../../src/scene/card-series.js';
import { lightnessOf } from '../../src/scene/colour.js';
import type { Stock } from '../../src/scene/scene.js';

const ink: Stock = {
  name: 'ink',
  colour: '#20243c',
  gramsPerM2: 300,
  caliperMm: 0.4,
  sheet: { name: 'A3', width: 297, height: 420 },
  margin: 8,
};
const stocks = new Map([['ink', ink]]);
const colours = (cards: readonly Stock[]) => cards.map((card) => card.colour);

describe('cardSeries', () => {
  it('gives one card to all panels', () => {
    expect(cardSeries(['ink'], stocks, 3)).toEqual([ink, ink, ink]);
  });

  it('runs from the first to the last of two, on the first one s kind of card', () => {
    const cards = cardSeries(['ink', 'ivory'], stocks, 4);
    expect(cards[0]).toBe(ink);
    expect(cards[3]!.name).toBe('ivory');
    expect(cards[3]!.gramsPerM2).toBe(240);
    for (const card of cards.slice(1, 3)) {
      expect(card).toEqual({ ...ink, name: card.colour, colour: card.colour });
    }
  });

  it('takes three or more as named and repeats the last', () => {
    expect(colours(cardSeries(['ink', 'plum', '#fa0'], stocks, 5))).toEqual([
      '#20243c',
      '#dda0dd',
      '#ffaa00',
      '#ffaa00',
      '#ffaa00',
    ]);
    expect(colours(cardSeries(['ink', 'plum', '#fa0'], stocks, 2))).toEqual(['#20243c', '#dda0dd']);
  });

  it('goes from dark to light when nothing is named, by at least 8 of L* in a book of eight', () => {
    const lightness = cardSeries([], stocks, 8).map((card) => lightnessOf(card.colour));
    for (const [i, value] of lightness.slice(1).entries()) {
      expect(value - lightness[i]!).toBeGreaterThan(8);
    }
  });
});
