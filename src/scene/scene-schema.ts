import { z } from 'zod';
import { BOUNDS } from './bounds.js';
import type { SceneContext } from './context.js';
import { DEFAULTS } from './defaults.js';
import { backingsSchema } from './element-keys.js';
import { entrySchema } from './element-schema.js';
import { choice, group, length, number, rule, text, wants, whole } from './fields.js';
import { LAYER_COLOURS, type LayerColours } from './layer-colours.js';
import { DETAIL_ORDERS, isSettingsFile, PROCESSES, SCORINGS, UNITS, type Unit } from './scene.js';
import {
  COLOURS,
  cardField,
  colourField,
  sayNoColour,
  stockField,
  stocksSchema,
} from './stock-schema.js';
import { windowSchema } from './window-schema.js';
import { quote, suggestion } from './words.js';

const TITLE_CHARACTERS = 200;

const FRONT_AND_BACKDROP = 'a book needs a front and a backdrop';

/** A scene file as read: lengths in mm, defaults filled in, names not yet looked up. */
export type SceneSaid = z.output<ReturnType<typeof sceneSchema>>;

/** The whole scene file, in the order in which an editor offers its keys. */
export function sceneSchema(context: SceneContext) {
  const { unit } = context;
  return group('a scene', {
    title: text(TITLE_CHARACTERS)
      .default(DEFAULTS.title)
      .meta({ description: 'Title of the book.' }),
    unit: choice(UNITS)
      .default(DEFAULTS.unit)
      .meta({ description: 'Unit of every length written as a bare number.' }),
    seed: whole(BOUNDS.seed)
      .default(DEFAULTS.seed)
      .meta({ description: 'Another number draws other plants in the same places.' }),
    process: processField()
      .prefault(DEFAULTS.process)
      .meta({
        description:
          'How the card is cut: knife cutter, laser, or dies in a press; or the settings file of ' +
          "your own machine, such as process/my-laser.yaml in the scene's folder.",
      }),
    panel: panelSchema(unit),
    panels: whole(BOUNDS.panels, FRONT_AND_BACKDROP)
      .default(DEFAULTS.panels)
      .meta({ description: 'Number of panels, the windowless backdrop counted.' }),
    spacing: length(unit, BOUNDS.spacing)
      .prefault(`${DEFAULTS.spacing} mm`)
      .meta({ description: 'From one panel to the next in the open book.' }),
    reading: length(unit, BOUNDS.reading)
      .prefault(`${DEFAULTS.reading} mm`)
      .meta({ description: "From the reader's eye to the front panel." }),
    window: windowSchema(context),
    spine: spineSchema(context),
    cards: cardsSchema(context),
    stocks: stocksSchema(context),
    strokes: strokesSchema(),
    detail: choice(DETAIL_ORDERS)
      .default(DETAIL_ORDERS[0])
      .meta({ description: 'Where in the book detail is coarse and where it is fine.' }),
    ball: length(unit, BOUNDS.ball).prefault(`${DEFAULTS.ball} mm`).meta({
      description: 'Diameter of the embossing ball: strokes of patterns keep so far apart.',
    }),
    scenery: z
      .array(entrySchema(context), { error: wants('a list of elements, each after a dash') })
      .default([])
      .meta({ description: 'What grows into the windows, in the order in which it is drawn.' }),
    backings: backingsSchema(context),
    stencils: stencilsSchema(context),
  });
}

/** A process of ours, or a settings file. */
function processField() {
  const allowed = `${PROCESSES.join(', ')}, or the path of a settings file that ends in .yaml`;
  const file = z.string().meta({ pattern: '\\.ya?ml$' });
  return z
    .union([z.enum(PROCESSES), file], { error: wants(`one of ${allowed}`) })
    .transform((said, context) => {
      const ours = PROCESSES.find((known) => known === said);
      if (ours !== undefined) return ours;
      if (isSettingsFile(said)) return said;
      const near = suggestion(said, PROCESSES);
      const message = `${quote(said)} is not known here${near} Allowed: ${allowed}`;
      context.addIssue({ code: 'custom', message });
      return z.NEVER;
    });
}

function panelSchema(unit: Unit) {
  const side = (mm: number, says: string) =>
    length(unit, BOUNDS.panelSide).prefault(`${mm} mm`).meta({ description: says });
  return group('panel', {
    width: side(DEFAULTS.panelWidth, 'Width of a panel, flaps included.'),
    height: side(DEFAULTS.panelHeight, 'Height of a panel.'),
  })
    .prefault({})
    .meta({ description: 'Size of every panel.' });
}

function spineSchema(context: SceneContext) {
  const { unit } = context;
  const spine = group('spine', {
    pitch: length(unit, BOUNDS.pitch)
      .optional()
      .meta({ description: 'From fold to fold. Give it or the angle, not both.' }),
    angle: number(BOUNDS.angleDeg, ' degrees')
      .optional()
      .meta({ description: 'Inside angle between two faces of the open book, in degrees.' }),
    tab: length(unit, BOUNDS.tab)
      .prefault(`${DEFAULTS.tab} mm`)
      .meta({ description: 'Width of the tab at each end of a strip.' }),
    scoring: choice(SCORINGS)
      .default(DEFAULTS.scoring)
      .meta({ description: 'both: valleys are scored from the back; front: all from the front.' }),
    card: cardField(context)
      .optional()
      .meta({ description: "A stock or a colour; the front panel's card if not said." }),
  });
  return rule(spine, 'angle', ({ pitch, angle }) =>
    pitch === undefined || angle === undefined
      ? undefined
      : 'the spacing and the pitch already set the angle; take pitch or angle out',
  )
    .prefault({})
    .meta({ description: 'The two concertina strips that hold the panels.' });
}

function strokesSchema() {
  const stroke = (operation: keyof LayerColours) =>
    colourField()
      .optional()
      .meta({
        description: `Colour of the ${operation} lines in the files; ours is ${LAYER_COLOURS[operation]}.`,
      });
  return group('strokes', {
    emboss: stroke('emboss'),
    fold: stroke('fold'),
    detail: stroke('detail'),
    cut: stroke('cut'),
    guide: stroke('guide'),
  })
    .prefault({})
    .meta({ description: 'Colours of the lines in the files, by operation.' });
}

function stencilsSchema(context: SceneContext) {
  return group('stencils', {
    card: stockField(context).meta({
      description: 'The stock of board that the plates are cut from; its caliper sets the layers.',
    }),
    clearance: number(BOUNDS.stencilClearance, ' calipers')
      .default(DEFAULTS.stencilClearance)
      .meta({
        description:
          'How much larger than the form its opening is all round, in calipers of the panel.',
      }),
  })
    .optional()
    .meta({
      description:
        'Cuts a stencil and a counter plate of board for every panel with relief, to burnish it ' +
        'by hand or run it through a press; the machine then presses none of these panels. Loose ' +
        "pieces keep their relief for the machine's own tool.",
    });
}

function cardsSchema(context: SceneContext) {
  const card = cardField(context);
  return z
    .union([card.transform((one) => [one]), z.array(card)], {
      error: ({ input }) =>
        sayNoColour(input, `${COLOURS}, the name of a stock, or a list of them`),
    })
    .default([])
    .meta({
      description:
        'Stocks or colours of the panels, front first. One: all panels. Two: an even series of ' +
        'lightness from the first to the last. More: the last repeats. None: a series of our own.',
    });
}
