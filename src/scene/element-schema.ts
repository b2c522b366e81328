import { z } from 'zod';
import { BOUNDS, SHARE_BOUNDS } from './bounds.js';
import type { SceneContext } from './context.js';
import { carriedShape, commonShape, PLACES, treatField } from './element-keys.js';
import { carried, choice, EXTENTS, extent, group, sayWrongKind, wants } from './fields.js';
import { sayExtent } from './length.js';
import { CORNERS, type ElementDescription, type Extent, SIDES, type Side } from './parameter.js';
import { parameterField, type Value } from './parameter-schema.js';
import type { Carried, End, GroupBox, Loose, SceneElement, Unit } from './scene.js';
import { notAmong, oneOf } from './words.js';

/** What is left to be found out when the whole scene is known. */
interface Unsettled {
  readonly id?: string | undefined;
  readonly panels?: readonly number[] | undefined;
  readonly behind?: string | undefined;
  readonly before?: string | undefined;
}

/** An element as the file says it, cards still by name. */
export type ElementSaid = Omit<SceneElement, 'id' | 'path' | 'panels' | 'group' | 'loose'> &
  Unsettled & { readonly loose: LooseSaid | null };

export type LooseSaid = Omit<Loose, 'card'> & { readonly card?: string | undefined };

/** A group as the file says it. */
export type GroupSaid = Omit<GroupBox, 'panels'> &
  Unsettled & { readonly element: 'group'; readonly members: readonly ElementSaid[] };

export type EntrySaid = ElementSaid | GroupSaid;

export const isGroupSaid = (entry: EntrySaid): entry is GroupSaid => 'members' in entry;

/** The word that stands for a group where elements have their kind's name. */
const GROUP = 'group';

const SIZE = { mm: BOUNDS.elementSize, share: SHARE_BOUNDS.elementSize };

/** One entry: the bare name of an element, or its keys with the element's own parameters. */
export function entrySchema(context: SceneContext) {
  const element = elementSchema(context);
  const { keyed, names, bare } = element;
  const all = z.discriminatedUnion('element', [...keyed, groupSchema(context, element.any)], {
    error: ({ input }) => sayNoElement(input, [...names, GROUP]),
  });
  return z.union([bare, all], { error: wants('the name of an element, or its keys') });
}

function elementSchema(context: SceneContext) {
  const shape = { ...carriedShape(context), ...commonShape(context) };
  const families = context.elements.map((element) => familySchema(element, shape, context.unit));
  const names = context.elements.map((element) => element.name);
  const keyed = families as [Family, ...Family[]];
  const union = z.discriminatedUnion('element', keyed, {
    error: ({ input }) => sayNoElement(input, names),
  });
  const bare = choice(names)
    .transform((element) => ({ element }))
    .pipe(union);
  const any = z.union([bare, union], { error: wants('the name of an element, or its keys') });
  return { keyed, names, bare, any };
}

type Family = ReturnType<typeof familySchema>;

function sayNoElement(entry: unknown, names: readonly string[]): string {
  const said = (entry as { element?: unknown } | null)?.element;
  if (typeof said === 'string') return notAmong(said, names);
  return sayWrongKind(said, `one of ${names.join(', ')}`);
}

const sizeField = (unit: Unit, usual: Extent, says: string) =>
  carried(EXTENTS, extent(unit, SIZE))
    .prefault(sayExtent(usual))
    .meta({ description: `${says} A length or a share of the window's; or { from, to }.` });

/** Several elements placed in a box of their own, which is carried as one element is. */
function groupSchema(context: SceneContext, member: ReturnType<typeof elementSchema>['any']) {
  const { unit } = context;
  const whole: Extent = { share: 1 };
  return group(GROUP, {
    element: z.literal(GROUP),
    ...carriedShape(context),
    side: choice(SIDES).default('sill').meta({ description: 'The side that its foot stands on.' }),
    width: sizeField(unit, whole, 'How wide its box is.'),
    height: sizeField(unit, whole, 'How high its box is.'),
    members: z.array(member, { error: wants('a list of elements, each after a dash') }).meta({
      description:
        "Its elements. Their shares are of the group's box, and all their lengths grow and shrink with it.",
    }),
  })
    .transform((said): GroupSaid => {
      const { id, panels, behind, before, members, carry, side, at, width, height, lift } = said;
      return {
        element: GROUP,
        id,
        panels,
        behind,
        before,
        carry: carry ?? 'straight',
        side,
        at: at ?? footOn(side),
        width,
        height,
        lift,
        mirror: said.mirror,
        members,
      };
    })
    .meta({
      title: GROUP,
      description: 'Elements that belong together, placed and carried as one.',
    });
}

function familySchema(
  element: ElementDescription,
  common: ReturnType<typeof carriedShape> & ReturnType<typeof commonShape>,
  unit: Unit,
) {
  const { width, height } = element.defaultSize;
  const { id, panels, carry, behind, before, at, along, snug, ...others } = common;
  const shape = {
    element: z.literal(element.name),
    id,
    panels,
    carry,
    behind,
    before,
    side: sideField(element),
    at,
    along,
    snug,
    width: sizeField(unit, width, 'How far it spreads along the side.'),
    height: sizeField(unit, height, 'How far it reaches into the window.'),
    ...others,
    treat: treatField(element),
  };
  return group(element.name, { ...shape, ...parameterShape(element, unit, shape) })
    .transform((said) => elementOf(element, said as Said & Readonly<Record<string, unknown>>))
    .meta({ title: element.name, description: element.says });
}

function sideField({ name: family, sides, defaultSide }: ElementDescription) {
  const corners = CORNERS.filter((corner) => sides.some((side) => corner.startsWith(`${side}-`)));
  const allowed = [...sides, ...corners];
  const field = z.enum(allowed, {
    error: ({ input }) =>
      [...SIDES, ...CORNERS].some((side) => side === input)
        ? `${family} does not grow from the ${input}; it grows from ${oneOf(allowed)}`
        : typeof input === 'string'
          ? notAmong(input, allowed)
          : sayWrongKind(input, `one of ${allowed.join(', ')}`),
  });
  return field
    .default(defaultSide)
    .meta({ description: 'The side, or the corner, of the window that it grows from.' });
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
type Said = z.output<
  z.ZodObject<ReturnType<typeof carriedShape> & ReturnType<typeof commonShape>>
> & {
  readonly side: Side | (typeof CORNERS)[number];
  readonly width: Carried<Extent>;
  readonly height: Carried<Extent>;
  readonly treat: SceneElement['treat'];
};

function elementOf(
  { name: element, parameters }: ElementDescription,
  said: Said & Readonly<Record<string, unknown>>,
): ElementSaid {
  const { side, corner } = rootedIn(said.side);
  return {
    id: said.id,
    element,
    panels: said.panels,
    carry: said.carry ?? 'straight',
    behind: said.behind,
    before: said.before,
    side,
    corner,
    at: said.at ?? footOn(side),
    along: said.along ?? null,
    snug: said.snug ?? null,
    width: said.width,
    height: said.height,
    lift: said.lift,
    mirror: said.mirror,
    pair: said.pair,
    scatter: said.scatter ?? null,
    stands: said.stands,
    detail: said.detail,
    seed: said.seed,
    frame: said.frame,
    treat: said.treat,
    pattern: said.pattern ?? null,
    loose: said.loose ?? null,
    heal: said.heal,
    values: Object.fromEntries(Object.keys(parameters).map((key) => [key, said[key] as Value])),
  };
}

/** Where the middle stands when nothing is said: on a jamb, the foot. */
function footOn(side: Side): Carried<Extent> {
  const foot: Extent = { share: side === 'left' || side === 'right' ? PLACES.end : PLACES.middle };
  return { from: foot, to: foot };
}

function rootedIn(said: Said['side']): { side: Side; corner: End | null } {
  const [side, end] = said.split('-') as [Side, 'left' | 'right' | undefined];
  return { side, corner: end === undefined ? null : end === 'left' ? 'start' : 'end' };
}
