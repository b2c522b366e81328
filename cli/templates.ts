/** What a new scene starts from: asked of the maker, or taken from the defaults. */
export interface Answers {
  readonly title: string;
  readonly unit: string;
  readonly process: string;
  readonly width: string;
  readonly height: string;
  readonly panels: string;
  readonly spacing: string;
  readonly shape: string;
}

export const DEFAULT_ANSWERS: Answers = {
  title: 'A walk by the water',
  unit: 'mm',
  process: 'knife',
  width: '190',
  height: '135',
  panels: '5',
  spacing: '20',
  shape: 'arch',
};

/** The scenery of each template; every one is a good book as it stands. */
export const TEMPLATES: Readonly<Record<string, { says: string; scenery: string }>> = {
  towpath: {
    says: 'reeds in front, a hedge along the path, trees behind',
    scenery: `scenery:
  - element: tree              # a willow leaning in from the right
    habit: willow
    side: right
    panels: 2
    width: 80 mm
    height: 80 mm
    heal: bridge
  - element: hedge             # runs back through three panels, lower and lower
    form: loose
    side: left
    panels: 1 to 3
    width: { from: 60 mm, to: 44 mm }
    height: { from: 40 mm, to: 26 mm }
  - element: grass             # a living edge instead of a straight sill
    kind: reeds
    panels: 1 to 2
    height: { from: 20 mm, to: 12 mm }
`,
  },
  courtyard: {
    says: 'brick round the windows, a clipped hedge and a tree',
    scenery: `scenery:
  - element: brick             # joints scored on the frame
    bond: flemish
    panels: 1 to 2
  - element: hedge             # clipped to balls
    form: ball
    panels: 2
    at: 78%
    width: 56 mm
    height: 24 mm
  - element: tree
    habit: broadleaf
    panels: 3
    at: 36%
    width: 58 mm
    height: 64 mm
`,
  },
  plain: { says: 'windows only, to try the format', scenery: 'scenery: []\n' },
};

/** A scene file's text. */
export const sceneText = (answers: Answers, template: string): string =>
  `# yaml-language-server: $schema=./scene.schema.json
title: ${JSON.stringify(answers.title)}
unit: ${answers.unit}               # of bare numbers: mm, cm or in
process: ${answers.process}         # knife, laser, press or a settings file of your machine
panel: { width: ${answers.width}, height: ${answers.height} }
panels: ${answers.panels}                # the backdrop counted
spacing: ${answers.spacing}              # from panel to panel in the open book
window:
  shape: ${answers.shape}            # rectangle, rounded, arch, pointed, circle or ellipse
  hold: sill               # deeper windows shrink from the head and the jambs
${TEMPLATES[template].scenery}`;
