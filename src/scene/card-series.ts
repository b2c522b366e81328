import { colourSeries, readColour } from './colour.js';
import { caliperOf, DEFAULTS } from './defaults.js';
import type { Stock } from './scene.js';
import { sheetSize } from './sheet-size.js';

/** Stocks by the scene's own names for them. */
export type Stocks = ReadonlyMap<string, Stock>;

/** The stock of this name, or else plain card of this colour; the name must be known. */
export function cardOf(name: string, stocks: Stocks): Stock {
  const stock = stocks.get(name);
  if (stock !== undefined) return stock;
  const colour = readColour(name);
  if (colour === undefined) throw new Error(`no stock and no colour is called ${name}`);
  return plainCard(name, colour);
}

/**
 * A card for each of `count` panels, front first. No names: from the dark to the light default.
 * One name: that card throughout. Two: an evenly stepped series between them, on the first one's
 * kind of card. More: as named, the last repeated where names run out.
 */
export function cardSeries(names: readonly string[], stocks: Stocks, count: number): Stock[] {
  if (names.length === 0) {
    return cardSeries([DEFAULTS.frontColour, DEFAULTS.backdropColour], stocks, count);
  }
  const cards = names.map((name) => cardOf(name, stocks));
  if (cards.length !== 2) {
    return Array.from({ length: count }, (_, i) => cards[Math.min(i, cards.length - 1)]);
  }
  const [first, last] = [cards[0], cards[1]];
  return colourSeries(first.colour, last.colour, count).map((colour, i) => {
    if (i === 0) return first;
    return i === count - 1 ? last : { ...first, name: colour, colour };
  });
}

function plainCard(name: string, colour: string): Stock {
  return {
    name,
    colour,
    gramsPerM2: DEFAULTS.gramsPerM2,
    caliperMm: caliperOf(DEFAULTS.gramsPerM2),
    sheet: sheetSize(DEFAULTS.sheet)!,
    margin: DEFAULTS.sheetMargin,
  };
}
