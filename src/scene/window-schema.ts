import { z } from 'zod';
import { BOUNDS } from './bounds.js';
import type { SceneContext } from './context.js';
import { DEFAULTS } from './defaults.js';
import { choice, group, length, rule, wants } from './fields.js';
import { SIDES, type Side } from './parameter.js';
import { WINDOW_SHAPES, type WindowChoice, type WindowForm, type WindowSeries } from './scene.js';

const NEVER_GROW =
  'each window is as large as the one in front of it or smaller, and must not grow';

/** One window and how the deeper ones follow from it, or a list of one for each panel. */
export function windowSchema(context: SceneContext) {
  return z
    .union([seriesSchema(context), listSchema(context)], {
      error: wants('keys such as shape, width and height, or a list of such windows'),
    })
    .prefault({})
    .meta({
      description:
        'The front window, from which the deeper ones follow; or a list of windows, front first, ' +
        'one for every panel but the backdrop.',
    });
}

function seriesSchema(context: SceneContext) {
  const series = group('window', {
    ...formShape(context),
    step: stepSchema(context),
    hold: holdSchema(),
  });
  return onlyRoundedHasRadius(series).transform(
    ({ step, hold, ...said }): WindowSeries => ({ first: choiceOf(said), step, hold }),
  );
}

function listSchema(context: SceneContext) {
  const byHand = onlyRoundedHasRadius(group('a window in a list', formShape(context)));
  const fault = (list: readonly unknown[]): string | undefined => {
    const wanted = (context.panels ?? 0) - 1;
    if (context.panels === undefined || list.length === wanted) return undefined;
    return `the list has ${list.length}; a book of ${context.panels} panels needs ${wanted}, one for every panel but the backdrop`;
  };
  return z.array(byHand.transform(choiceOf)).refine((list) => fault(list) === undefined, {
    when: ({ value }) => Array.isArray(value),
    error: ({ input }) => fault(input as unknown[]),
  });
}

function formShape({ unit }: SceneContext) {
  const side = () => length(unit, BOUNDS.windowSide).optional();
  const margin = () => length(unit, BOUNDS.windowMargin).optional();
  return {
    shape: choice(WINDOW_SHAPES)
      .default(DEFAULTS.shape)
      .meta({ description: 'Outline of the window.' }),
    width: side().meta({ description: 'Width of the window.' }),
    height: side().meta({ description: 'Height of the window.' }),
    head: margin().meta({ description: 'Card above the window.' }),
    sill: margin().meta({ description: 'Card below the window.' }),
    jamb: margin().meta({ description: 'Card at each side of the window.' }),
    radius: length(unit, BOUNDS.radius)
      .optional()
      .meta({
        description: `Corner radius of a rounded window; ${DEFAULTS.radius} mm if not said.`,
      }),
  };
}

function stepSchema({ unit }: SceneContext) {
  const field = () => length(unit, BOUNDS.step, NEVER_GROW);
  const both = group('step', {
    width: field().meta({ description: 'How much narrower each deeper window is.' }),
    height: field().meta({ description: 'How much lower each deeper window is.' }),
  });
  return z
    .union([field().transform((step) => ({ width: step, height: step })), both], {
      error: wants('a length, or { width, height }'),
    })
    .prefault(`${DEFAULTS.step} mm`)
    .meta({
      description:
        'How much narrower and lower each deeper window is, both sides together: one length, or ' +
        '{ width, height }. Zero or more.',
    });
}

function holdSchema() {
  const one = choice(['centre', ...SIDES]).transform((side): Side[] =>
    side === 'centre' ? [] : [side],
  );
  const several = z.array(choice(SIDES)).transform((sides): Side[] => [...new Set(sides)]);
  return z
    .union([one, several], {
      error: wants(`centre, one of ${SIDES.join(', ')}, or a list of them`),
    })
    .prefault('centre')
    .meta({ description: 'The edge or edges that stay where they are while the window shrinks.' });
}

function onlyRoundedHasRadius<S extends z.ZodType>(schema: S): S {
  return rule(schema, 'radius', ({ radius, shape }) => {
    const other = WINDOW_SHAPES.find((known) => known === shape && known !== 'rounded');
    if (radius === undefined || other === undefined) return undefined;
    return `only a rounded window has a radius, and this one is "${other}"; take one of them out`;
  });
}

type Said = Omit<WindowChoice, keyof WindowForm> &
  Pick<WindowForm, 'shape'> & { radius?: number | undefined };

const choiceOf = ({ radius, ...said }: Said): WindowChoice => ({
  ...said,
  radius: said.shape === 'rounded' ? (radius ?? DEFAULTS.radius) : 0,
});
