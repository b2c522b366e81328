import { z } from 'zod';
import { COLOUR_NAMES } from '../geometry/svg/colour-names.js';
import { BOUNDS } from './bounds.js';
import { readColour } from './colour.js';
import type { SceneContext } from './context.js';
import { caliperOf, DEFAULTS } from './defaults.js';
import {
  choice,
  group,
  length,
  name,
  number,
  sayNoText,
  sayWrongKind,
  settle,
  wants,
} from './fields.js';
import type { Stock, Unit } from './scene.js';
import { SHEET_NAMES, type SheetSize, sheetSize } from './sheet-size.js';
import { notAmong, quote, suggestion } from './words.js';

export const COLOURS = 'a colour such as "#20243c" or midnightblue';
/** A bare # begins a comment, so that the value before it is nothing. */
const HASH_HINT = 'a colour that begins with # must be in quotes, "#20243c"';

/** A stock as the file says it; its name is its key. */
export type StockSaid = Omit<Stock, 'name'>;

/** Kinds of card by name. */
export function stocksSchema({ unit }: SceneContext) {
  return z
    .record(name(), stockSchema(unit), { error: wants('names of stocks, each with its keys') })
    .prefault({})
    .meta({ description: 'Kinds of card by names of your own, for `cards` and `spine`.' });
}

function stockSchema(unit: Unit) {
  return group('a stock', {
    colour: colourField().meta({ description: 'Colour of the card, such as "#20243c".' }),
    grammage: number(BOUNDS.gramsPerM2, ' g/m2')
      .default(DEFAULTS.gramsPerM2)
      .meta({ description: 'Mass of the card in g/m2.' }),
    caliper: length(unit, BOUNDS.caliper)
      .optional()
      .meta({ description: 'Thickness of one sheet; if not said, grammage x 1.25 / 1000 mm.' }),
    sheet: sheetField(unit),
    margin: length(unit, BOUNDS.sheetMargin)
      .prefault(`${DEFAULTS.sheetMargin} mm`)
      .meta({ description: 'Kept free at every edge of the sheet.' }),
  }).transform(({ colour, grammage, caliper, sheet, margin }, context): StockSaid => {
    const free = Math.min(sheet.width, sheet.height) - 2 * margin;
    if (free <= 0) {
      const message = `the margins leave nothing of a sheet ${sheet.width} x ${sheet.height} mm`;
      context.addIssue({ code: 'custom', path: ['margin'], message });
    }
    const caliperMm = caliper ?? caliperOf(grammage);
    return { colour, gramsPerM2: grammage, caliperMm, sheet, margin };
  });
}

function sheetField(unit: Unit) {
  const side = (says: string) => length(unit, BOUNDS.sheetSide).meta({ description: says });
  const own = group('sheet', {
    width: side('Across the grain.'),
    height: side('Along the grain.'),
  }).transform(
    ({ width, height }): SheetSize => ({ name: `${width} x ${height} mm`, width, height }),
  );
  const named = choice(SHEET_NAMES).transform((name): SheetSize => sheetSize(name)!);
  return z
    .union([named, own], {
      error: wants('the name of a sheet such as A4 or Letter, or { width, height }'),
    })
    .prefault(DEFAULTS.sheet)
    .meta({ description: 'The sheet that the card comes in, grain along its height.' });
}

/** Gives `#rrggbb`. */
export function colourField() {
  return z
    .string({ error: ({ input }) => sayNoColour(input, COLOURS) })
    .transform((said, context) => {
      const colour = readColour(said);
      const problem = sayUnknownColour(said, `no colour; give ${COLOURS}`, []);
      return settle(context, colour === undefined ? { problem } : { value: colour });
    });
}

/** The name of a stock, or a colour. */
export function cardField({ stockNames }: SceneContext) {
  const allowed = `the name of a stock, or ${COLOURS}`;
  return z
    .string({ error: ({ input }) => sayNoColour(input, allowed) })
    .transform((said, context) => {
      const known = stockNames.includes(said) || readColour(said) !== undefined;
      const named =
        stockNames.length > 0 ? `stocks are ${stockNames.join(', ')}` : 'there are no stocks';
      const problem = sayUnknownColour(said, `neither a stock nor a colour; ${named}`, stockNames);
      return settle(context, known ? { value: said } : { problem });
    });
}

/** The name of a stock and nothing else, where a card's thickness matters and not its colour. */
export function stockField({ stockNames }: SceneContext) {
  return z
    .string({ error: wants('the name of a stock under `stocks`') })
    .transform((said, context) => {
      const known = stockNames.includes(said);
      const problem =
        stockNames.length > 0
          ? notAmong(said, stockNames)
          : `${quote(said)} is no stock; there are none yet: add it under \`stocks\` with its caliper`;
      return settle(context, known ? { value: said } : { problem });
    });
}

export function sayNoColour(said: unknown, allowed: string): string {
  if (said === null) return `left empty; ${HASH_HINT}`;
  return typeof said === 'number' ? sayNoText(said) : sayWrongKind(said, allowed);
}

function sayUnknownColour(said: string, fault: string, names: readonly string[]): string {
  if (said.startsWith('#')) {
    return `${quote(said)} is no colour; write # and three or six of 0-9 and a-f`;
  }
  const near = suggestion(said, [...names, ...Object.keys(COLOUR_NAMES)]);
  return `${quote(said)} is ${fault}${near === '.' ? '' : near}`;
}
