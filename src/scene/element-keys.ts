import { z } from 'zod';
import { ALONG_ALLOWED, ALONG_PATTERN, readAlong } from './along.js';
import { BOUNDS, SHARE_BOUNDS } from './bounds.js';
import type { SceneContext } from './context.js';
import {
  carried,
  choice,
  EXTENTS,
  extent,
  flag,
  group,
  length,
  name,
  number,
  settle,
  text,
  wants,
  whole,
} from './fields.js';
import { PANEL_RUN_PATTERN, PANEL_WORDS, PANELS_ALLOWED, readPanels } from './panel-numbers.js';
import type { ElementDescription } from './parameter.js';
import {
  CARRIES,
  DETAILS,
  ENDS,
  FRAME_WORKS,
  HEALS,
  MOUNTS,
  PLACE_MARKS,
  STANDS,
  TEXTURES,
  type Treatment,
  type Unit,
  WORKS,
  type Work,
  ZONES,
} from './scene.js';
import { cardField } from './stock-schema.js';

/** Words for places along an edge. */
export const PLACES = { start: 0, middle: 0.5, end: 1 } as const;

const AT = { mm: BOUNDS.at, share: SHARE_BOUNDS.at };
const LIFT = { mm: BOUNDS.lift, share: SHARE_BOUNDS.lift };

/** What a loose piece and a backing have in common when nothing is said. */
const USUAL_GLUE = { loose: '6 mm', backing: '4 mm' } as const;
const USUAL_STAND_OFF_MM = { flat: 0, pad: 2, spacer: 6 } as const;

/** The keys that an element and a group both have. */
export function carriedShape({ unit, panels }: SceneContext) {
  return {
    id: name()
      .optional()
      .meta({
        description:
          'Its name in this scene, which its random stream follows from. If not said: the ' +
          'element and its number among its kind, such as hedge-1.',
      }),
    panels: panelsField(panels).optional(),
    carry: choice(CARRIES)
      .optional()
      .meta({
        description:
          'How what is said with { from, to } changes on its way through the panels. straight: by the ' +
          'same step from panel to panel. perspective: as a row of equal things looks that runs ' +
          'straight away from the reader, most of it in front. If not said: straight.',
      }),
    behind: name()
      .optional()
      .meta({ description: 'The id of the element that it stands just behind in each panel.' }),
    before: name()
      .optional()
      .meta({ description: 'The id of the element that it stands just in front of.' }),
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
  };
}

/** The other keys that every element has. */
export function commonShape(context: SceneContext) {
  const { unit } = context;
  return {
    along: alongField(unit).optional(),
    snug: choice(ENDS)
      .optional()
      .meta({
        description:
          'Moves it up against the neighbouring edge: start is the left (sill, head) or the top ' +
          '(jambs), end the other.',
      }),
    pair: flag()
      .default(false)
      .meta({ description: 'A second one stands opposite it, as in a mirror.' }),
    scatter: scatterField(unit).optional(),
    stands: choice(STANDS)
      .default('across')
      .meta({
        description:
          'across: cut in the window and pressed on the frame. window: nothing of it on the frame. ' +
          'frame: only pressed, nothing of it cut.',
      }),
    detail: choice(DETAILS)
      .default('auto')
      .meta({ description: 'How fine its detail is; auto: as the order of detail of the scene.' }),
    seed: whole(BOUNDS.seed)
      .default(0)
      .meta({ description: 'Another number draws another one of the same kind.' }),
    frame: choice(FRAME_WORKS)
      .default('score')
      .meta({ description: 'What is done of it where it stands on the frame.' }),
    pattern: choice(TEXTURES)
      .optional()
      .meta({ description: 'Fills what is raised or sunk of it with a pattern.' }),
    loose: looseField(context).optional(),
    heal: choice(HEALS)
      .default('error')
      .meta({ description: 'What is done with a part that would fall out.' }),
  };
}

function alongField(unit: Unit) {
  return z
    .string({ error: wants(ALONG_ALLOWED) })
    .meta({ pattern: ALONG_PATTERN })
    .transform((said, context) => settle(context, readAlong(said, unit)))
    .meta({
      description: `The stretch of its side that it takes up, in place of at and width: ${ALONG_ALLOWED}.`,
    });
}

function scatterField(unit: Unit) {
  const size = number(BOUNDS.sizeShare);
  return group('scatter', {
    count: whole(BOUNDS.scattered).meta({ description: 'How many.' }),
    gap: length(unit, BOUNDS.gap)
      .prefault('2 mm')
      .meta({ description: 'Least gap between neighbours.' }),
    sizes: group('sizes', {
      from: size.default(0.8).meta({ description: 'The smallest.' }),
      to: size.default(1.1).meta({ description: 'The largest.' }),
    })
      .prefault({})
      .meta({ description: 'Sizes between which they vary, as shares of the size said.' }),
  }).meta({
    description: 'Several of it, spread unevenly over its stretch of the side, none overlapping.',
  });
}

function looseField(context: SceneContext) {
  const { unit } = context;
  return group('loose', {
    card: cardField(context).optional().meta({
      description: "A stock or a colour; its panel's card if not said.",
    }),
    place: choice(['front', 'behind'])
      .default('front')
      .meta({ description: 'Glued before the panel or behind it, as the reader looks.' }),
    mount: choice(MOUNTS).default('flat').meta({
      description:
        'flat: glued to the panel. pad: on pads of foam or board. spacer: on a folded card strip.',
    }),
    off: length(unit, BOUNDS.standOff)
      .optional()
      .meta({
        description: `How far the mount holds it off the panel; a pad ${USUAL_STAND_OFF_MM.pad} mm, a spacer ${USUAL_STAND_OFF_MM.spacer} mm if not said.`,
      }),
    glue: length(unit, BOUNDS.glue)
      .prefault(USUAL_GLUE.loose)
      .meta({ description: "How far its foot runs on over the panel's card to be glued." }),
    mark: markField(),
    copies: whole(BOUNDS.copies).default(1).meta({ description: 'How many of it are cut.' }),
  })
    .transform(({ off, ...said }) => ({
      ...said,
      standOff: said.mount === 'flat' ? 0 : (off ?? USUAL_STAND_OFF_MM[said.mount]),
    }))
    .meta({ description: 'Cuts it as a piece of its own, to be glued to its panel.' });
}

const markField = () =>
  choice(PLACE_MARKS)
    .default('guide')
    .meta({ description: 'Its place on the panel: only a guide, never cut, or a faint score.' });

export function backingsSchema(context: SceneContext) {
  const { unit, panels } = context;
  const backing = group('a backing', {
    id: name().optional().meta({ description: 'Its name; backing-1 and so on if not said.' }),
    panels: panelsField(panels),
    card: cardField(context).meta({ description: 'The stock or colour that it is cut from.' }),
    behind: name().optional().meta({
      description: 'The id of the element whose holes it closes; the window if not said.',
    }),
    part: text(60)
      .optional()
      .meta({ description: 'Only the holes of this part of the element, such as train.' }),
    glue: length(unit, BOUNDS.glue)
      .prefault(USUAL_GLUE.backing)
      .meta({ description: 'How far it runs on behind the card to be glued.' }),
    mark: markField(),
  });
  return z
    .array(backing, { error: wants('a list of backings, each after a dash') })
    .default([])
    .meta({ description: 'Paper, film or card glued behind windows or behind holes of scenery.' });
}

/**
 * What is treated apart: zones that every element has, and the parts that this one names. Whatever
 * order the file has, the more closely something is named, the later it comes.
 */
export function treatField({ name: family, parts = [] }: ElementDescription) {
  const known = [...ZONES, ...parts];
  const work = choice(WORKS);
  const shape = Object.fromEntries(known.map((part) => [part, work.optional()]));
  return group(`treat of ${family}`, shape)
    .transform((said): Treatment[] =>
      Object.entries(said as Record<string, Work | undefined>).flatMap(([part, how]) =>
        how === undefined ? [] : [{ part, work: how }],
      ),
    )
    .prefault({})
    .meta({
      description: `Parts of it treated apart: ${known.join(', ')}; each cut, score, raise, sink or none. A named part goes over a quarter, that over a half, that over window and frame.`,
    });
}

export function panelsField(count: number | undefined) {
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
    .meta({
      description: `The panels it stands in, front = 1: ${PANELS_ALLOWED}. \`all\`: all with a window. If not said: all, or those of its group.`,
    });
}
