import { describe, expect, it } from 'vitest';
import { readProcess } from '../../src/process/read-process.js';
import { STARTING } from '../../src/process/starting.js';
import { SceneError } from '../../src/scene/problem.js';

function problemsIn(text: string): string[] {
  try {
    readProcess(text, 'process/lock-laser.yaml');
  } catch (error) {
    if (!(error instanceof SceneError)) throw error;
    return error.problems.map(({ line, column, message }) => `${line}:${column} ${message}`);
  }
  return [];
}

describe('readProcess', () => {
  it.each(['knife', 'laser', 'press'] as const)('%s: all that is left out is ours', (kind) => {
    expect(readProcess(`kind: ${kind}\n`, `${kind}.yaml`)).toEqual(STARTING[kind]);
  });

  it('is named after its file, wherever that is', () => {
    expect(readProcess('kind: laser\n', 'process/lock-laser.yaml').name).toBe('lock-laser');
    expect(readProcess('kind: laser\n', 'C:\\lock\\thin.yml').name).toBe('thin');
  });

  it('reads every key of a laser, lengths in the unit of the file or their own', () => {
    const text = `kind: laser
unit: cm
smallest: { web: 0.08, slot: 0.3 mm, hole: 1 mm }
clearance: 0.2
kerf: 0.015
shared-edges: true
face-down: true
bed: { width: 30, height: 21, margin: 5 mm, origin: bottom left }
faces: [front]
order: [fold, detail, emboss, cut]
operations:
  cut: { passes: 2, speed: 12.5, stroke: "#F00" }
  fold: { stroke: teal }
motion: { travel: 400, acceleration: 1000, lift: 0.1, corner: 0.02 mm, stop: 30 }
folds: { cut: 2 mm, tie: 1/10 }
nibs: { count: 3, width: 0.6 mm }
relief: { how: contour, angle: 0, apart: 0.5 mm }
heat: { apart: 4 mm, densest: 0.8 }
rates: { currency: EUR, set-up: 12, hour: 60, sheet: 0.4, quantities: [1, 30] }
`;
    const start = STARTING.laser.operations;
    expect(readProcess(text, 'thin.yaml')).toEqual({
      kind: 'laser',
      name: 'thin',
      limits: { smallestWeb: 0.8, smallestSlot: 0.3, smallestHole: 1, scoreClearance: 2 },
      kerfMm: 0.15,
      sharedEdges: true,
      faceDown: true,
      bed: { widthMm: 300, heightMm: 210, marginMm: 5, origin: 'bottom left' },
      faces: ['front'],
      order: ['fold', 'detail', 'emboss', 'cut'],
      operations: {
        emboss: start.emboss,
        detail: start.detail,
        fold: { ...start.fold, stroke: '#008080' },
        cut: { passes: 2, speedMmS: 12.5, stroke: '#ff0000' },
      },
      motion: { travelMmS: 400, accelerationMmS2: 1000, liftS: 0.1, cornerMm: 0.02, stopS: 30 },
      folds: { how: 'perforation', cutMm: 2, tieMm: 1 },
      nibs: { count: 3, widthMm: 0.6 },
      relief: { how: 'contour', angleDeg: 0, apartMm: 0.5 },
      heat: { apartMm: 4, densestPerMm: 0.8 },
      rates: { currency: 'EUR', setUp: 12, hour: 60, sheet: 0.4, quantities: [1, 30] },
    });
  });

  it('reads a blade in inches', () => {
    const text =
      'kind: knife\nunit: in\nblade: { offset: 1/100, overcut: 0.5 mm, compensate: true }\n';
    const knife = readProcess(text, 'mat.yaml');
    // The inch is 25.4 mm: international yard and pound agreement, 1959.
    expect(knife).toMatchObject({ blade: { offsetMm: 0.254, overcutMm: 0.5, compensate: true } });
  });
});

/** Each wrong file, and what is said of it. */
const WRONG: readonly (readonly [name: string, text: string, says: readonly RegExp[]])[] = [
  ['an empty file', '', [/^1:1 the file is empty; settings are keys.*kind: laser/]],
  ['a list', '- laser\n', [/^1:1 the whole file is not a group of keys/]],
  ['no kind', 'kerf: 0.2\n', [/^1:1 kind: missing; say what .*knife, laser, press/]],
  ['an empty kind', 'kind:\n', [/^1:1 kind: nothing will not do/]],
  ['a number for a kind', 'kind: 4\n', [/^1:7 kind: 4 will not do/]],
  [
    'an unknown kind',
    'kind: scissors\n',
    [/^1:7 kind: "scissors" is not known here\. Allowed: knife/],
  ],
  [
    'a misspelt kind, and all else',
    'kind: lasr\nkerf: 2\nblade: {}\n',
    [
      /^1:7 kind: "lasr" is not known here; did you mean "laser"\?/,
      /^2:7 kerf: 2 is too large; it may be 0 to 1 mm/,
      /^3:1 "blade" is no key of the settings of a laser\. Allowed: .*kerf/,
    ],
  ],
  [
    'a kerf for a knife',
    'kind: knife\nkerf: 0.2\n',
    [/^2:1 "kerf" is no key of the settings of a knife/],
  ],
  ['nibs for a press', 'kind: press\nnibs: { count: 2 }\n', [/^2:1 "nibs" is no key/]],
  ['a misspelt key', 'kind: laser\nkref: 0.2\n', [/^2:1 "kref" is no key .*did you mean "kerf"\?/]],
  [
    'a misspelt inner key',
    'kind: laser\nbed: { widht: 300 }\n',
    [/^2:8 "widht" .*did you mean "width"\?/],
  ],
  [
    'a negative kerf',
    'kind: laser\nkerf: -0.1\n',
    [/^2:7 kerf: -0.1 is too small; it may be 0 to 1 mm/],
  ],
  [
    'an unknown unit',
    'kind: laser\nkerf: 2 ells\n',
    [/^2:7 kerf: .*"ells" is not a unit; use mm, cm or in/],
  ],
  ['a comma', 'kind: laser\nkerf: 0,2\n', [/^2:7 kerf: .*decimals with a point/]],
  ['an empty key', 'kind: laser\nkerf:\n', [/^2:1 kerf: left empty; give a length/]],
  [
    'a bed of margins',
    'kind: laser\nbed: { width: 100, height: 80, margin: 40 }\n',
    [/^2:40 bed.margin: the margins leave nothing of a bed 100 x 80 mm/],
  ],
  [
    'a cut before the end',
    'kind: laser\norder: [emboss, cut, fold, detail]\n',
    [/^2:8 order: the cut must come last, because it frees the pieces/],
  ],
  [
    'an order with one missing',
    'kind: laser\norder: [fold, cut]\n',
    [/^2:8 order: it leaves out emboss and detail; name each/],
  ],
  [
    'an order with one twice',
    'kind: laser\norder: [fold, fold, emboss, detail, cut]\n',
    [/^2:8 order: "fold" stands here twice/],
  ],
  [
    'a misspelt operation',
    'kind: laser\norder: [fold, detial, emboss, cut]\n',
    [/^2:15 order number 2: "detial" .*did you mean "detail"\?/],
  ],
  ['no faces', 'kind: laser\nfaces: []\n', [/^2:8 faces: name each face once/]],
  ['a face twice', 'kind: laser\nfaces: [front, front]\n', [/^2:8 faces: name each face once/]],
  ['a bare colour', 'kind: laser\noperations: { cut: { stroke: #f00 } }\n', [/^\d:\d+ .*#/]],
  [
    'no such colour',
    'kind: laser\noperations: { cut: { stroke: reddish } }\n',
    [/^2:30 operations.cut.stroke: "reddish"/],
  ],
  [
    'half a pass',
    'kind: laser\noperations: { cut: { passes: 1.5 } }\n',
    [/^2:30 operations.cut.passes: 1.5 will not do; give a whole number/],
  ],
  [
    'no pass',
    'kind: laser\noperations: { cut: { passes: 0 } }\n',
    [/^2:30 operations.cut.passes: 0 is too small; it may be 1 to 20/],
  ],
  [
    'a speed of nothing',
    'kind: laser\noperations: { cut: { speed: 0 } }\n',
    [/^2:29 operations.cut.speed: 0 is too small; .* mm\/s/],
  ],
  [
    'half a perforation',
    'kind: laser\nfolds: { cut: 2 }\n',
    [/^2:8 folds.tie: missing; give a length/],
  ],
  [
    'another fold',
    'kind: laser\nfolds: dotted\n',
    [/^2:8 folds: "dotted" is not known here\. Allowed: line/],
  ],
  [
    'a hatch of the other kind',
    'kind: laser\nrelief: { how: rings }\n',
    [/^2:16 relief.how: "rings" is not known here\. Allowed: hatch, contour, none/],
  ],
  ['a negative price', 'kind: laser\nrates: { hour: -5 }\n', [/^2:16 rates.hour: -5 is too small/]],
  [
    'no quantities',
    'kind: laser\nrates: { quantities: [] }\n',
    [/^2:22 rates.quantities: name at least one/],
  ],
  ['a key said twice', 'kind: laser\nkerf: 0.1\nkerf: 0.2\n', [/^3:1 "kerf" is said twice/]],
  ['a tab', 'kind: laser\nbed:\n\twidth: 30\n', [/^3:1 .*tab/]],
  ['two documents', 'kind: laser\n---\nkind: knife\n', [/^2:\d .*second document.*one only/]],
];

describe('a wrong settings file', () => {
  it.each(WRONG)('%s', (_name, text, says) => {
    const found = problemsIn(text);
    expect(found).toEqual(says.map((pattern) => expect.stringMatching(pattern)));
  });

  it('has everything told at once, in the order of the file', () => {
    const text = 'kind: knife\nblade: { offset: 9 }\nmotion: { travle: 3 }\norder: [cut]\n';
    expect(problemsIn(text).map((said) => said.split(' ')[0])).toEqual(['2:18', '3:11', '4:8']);
  });
});
