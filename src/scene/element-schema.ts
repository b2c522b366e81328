import { z } from 'zod';
import { BOUNDS, SHARE_BOUNDS } from './bounds.js';
import type { SceneContext } from './context.js';
import {
  carried,
  choice,
  EXTENTS,
  extent,
  flag,
  group,
  name,
  sayWrongKind,
  settle,
  wants,
  whole,
} from './fields.js';
import { sayExtent } from './length.js';
import { PANEL_RUN_PATTERN, PANEL_WORDS, PANELS_ALLOWED, readPanels } from './panel-numbers.js';
import { type ElementDescription, type Extent, SIDES, type Side } from './parameter.js';
import { parameterField, type Value } from './parameter-schema.js';
import {
  CARRIES,
  type Carried,
  FRAME_WORKS,
  HEALS,
  type SceneElement,
  type Unit,
} from './scene.js';
import { notAmong, oneOf } from './words.js';

/** An entry of the scenery list; its id is still to be found when the file gives none. */
export type ElementSaid = Omit<SceneElement, 'id'> & { readonly id?: string | undefined };

/** Words for places along an edge. */
const PLACES = { start: 0, middle: 0.5, end: 1 } as const;

const AT = { mm: BOUNDS.at, share: SHARE_BOUNDS.at };
const SIZE = { mm: BOUNDS.elementSize, share: SHARE_BOUNDS.elementSize };
const LIFT = { mm: BOUNDS.lift, share: SHARE_BOUNDS.lift };

/** One entry: the bare name of an element, or its keys with the element's own parameters. */
export function elementSchema(context: SceneContext) {
  const common = commonShape(context);
  const families = context.elements.map((element) => familySchema(element, common, context.unit));
  const names = context.elements.map((element) => element.name);
  const keyed = z.discriminatedUnion('element', families as [Family, ...Family[]], {
    error: ({ input }) => sayNoElement(input, names),
  });
  const bare = choice(names)
    .transform((element) => ({ element }))
    .pipe(keyed);
  return z.union([bare, keyed], { error: wants('the name of an element, or its keys') });
}

type Family = ReturnType<typeof familySchema>;

function sayNoElement(entry: unknown, names: readonly string[]): string {
  const said = (entry as { element?: unknown } | null)?.element;
  if (typeof said === 'string') return notAmong(said, names);
  return sayWrongKind(said, `one of ${names.join(', ')}`);
}

/** The keys that every element has. */
function commonShape({ unit, panels }: SceneContext) {
  return {
    id: name()
      .optional()
      .meta({
        description:
          'Its name in this scene, which its random stream follows from. If not said: the ' +
          'element and its number among its kind, such as hedge-1.',
      }),
    panels: panelsField(panels),
    carry: choice(CARRIES)
      .default('straight')
      .meta({
        description:
          'How what is said with { from, to } changes on its way through the panels. straight: by the ' +
          'same step from panel to panel. perspective: as a row of equal things looks that runs ' +
          'straight away from the reader, most of it in front.',
      }),
    at: carried([EXTENTS, ...Object.keys(PLACES)].join(', or '), extent(unit, AT, PLACES))
      .optional()
      .meta({
        description:
          'Where its middle stands along the side: from the left, or from the top at a jamb. A ' +
          'length, a share of the edge, start, middle or end; or { from, to }. If not said: 50%, ' +
          'at a jamb 100%, which is its foot.',
      }),
    lift: carried(EXTENTS, extent(unit, LIFT)).prefault('0 mm').meta({
      description: "Lifts its foot off the window's edge; less than 0 sinks it into the frame.",
    }),
    mirror: flag().default(false).meta({ description: 'Turns it left to right.' }),
    seed: whole(BOUNDS.seed)
      .default(0)
      .meta({ description: 'Another number draws another one of the same kind.' }),
    frame: choice(FRAME_WORKS)
      .default('score')
      .meta({ description: 'What is done of it where it stands on the frame.' }),
    heal: choice(HEALS)
      .default('error')
      .meta({ description: 'What is done with a part that would fall out.' }),
  };
}

function panelsField(count: number | undefined) {
  const panelNumber = z
    .int({ error: wants('the number of a panel') })
    .meta({ minimum: 1, maximum: BOUNDS.panels.max });
  const said = z.union(
    [
      panelNumber,
      z.enum(PANEL_WORDS),
      z.string().meta({ pattern: PANEL_RUN_PATTERN }),
      z.array(panelNumber),
    ],
    { error: wants(PANELS_ALLOWED) },
  );
  return said
    .transform((panels, context) => settle(context, readPanels(panels, count)))
    .prefault('all')
    .meta({
      description: `The panels it stands in, front = 1: ${PANELS_ALLOWED}. \`all\`: all with a window.`,
    });
}

function familySchema(
  element: ElementDescription,
  common: ReturnType<typeof commonShape>,
  unit: Unit,
) {
  const { width, height } = element.defaultSize;
  const size = (value: Extent, says: string) =>
    carried(EXTENTS, extent(unit, SIZE))
      .prefault(sayExtent(value))
      .meta({ description: `${says} A length or a share of the window's; or { from, to }.` });
  const { id, panels, carry, at, ...others } = common;
  const shape = {
    element: z.literal(element.name),
    id,
    panels,
    carry,
    side: sideField(element),
    at,
    width: size(width, 'How far it spreads along the side.'),
    height: size(height, 'How far it reaches into the window.'),
    ...others,
  };
  return group(element.name, { ...shape, ...parameterShape(element, unit, shape) })
    .transform((said) => elementOf(element, said as Said & Readonly<Record<string, unknown>>))
    .meta({ title: element.name, description: element.says });
}

function sideField({ name: family, sides, defaultSide }: ElementDescription) {
  const field = z.enum(sides, {
    error: ({ input }) =>
      SIDES.some((side) => side === input)
        ? `${family} does not grow from the ${input}; it grows from ${oneOf(sides)}`
        : typeof input === 'string'
          ? notAmong(input, sides)
          : sayWrongKind(input, `one of ${sides.join(', ')}`),
  });
  return field.default(defaultSide).meta({ description: 'The side of the window it grows from.' });
}

function parameterShape(
  { name: family, parameters }: ElementDescription,
  unit: Unit,
  taken: Readonly<Record<string, unknown>>,
): Record<string, z.ZodType<Value>> {
  return Object.fromEntries(
    Object.entries(parameters).map(([key, parameter]) => {
      if (Object.hasOwn(taken, key)) {
        throw new Error(`${family}: every element has a key "${key}", so no parameter can`);
      }
      return [key, parameterField(parameter, unit)];
    }),
  );
}

/** The keys that every element has, read. */
type Said = z.output<z.ZodObject<ReturnType<typeof commonShape>>> & {
  readonly side: Side;
  readonly width: Carried<Extent>;
  readonly height: Carried<Extent>;
};

function elementOf(
  { name: element, parameters }: ElementDescription,
  said: Said & Readonly<Record<string, unknown>>,
): ElementSaid {
  const { id, panels, carry, side, width, height, lift, mirror, seed, frame, heal } = said;
  const foot: Extent = { share: side === 'left' || side === 'right' ? PLACES.end : PLACES.middle };
  const at = said.at ?? { from: foot, to: foot };
  const values = Object.fromEntries(
    Object.keys(parameters).map((key) => [key, said[key] as Value]),
  );
  return {
    id,
    element,
    panels,
    carry,
    side,
    at,
    width,
    height,
    lift,
    mirror,
    seed,
    frame,
    heal,
    values,
  };
}
