import { describe, expect, it } from 'vitest';
import { SceneError } from '../../src/scene/problem.js';
import { readScene } from '../../src/scene/read.js';
import { elements } from './elements.js';

const read = (text: string) => readScene(text, { file: 'scene.yaml', elements }).scene;
const problems = (text: string): string[] => {
  try {
    read(text);
  } catch (error) {
    if (error instanceof SceneError) return error.message.split('\n');
    throw error;
  }
  return [];
};

const GROUP = `panels: 5
scenery:
  - hedge
  - element: group
    id: bank
    panels: 2 to 4
    width: { from: 80, to: 50 }
    members:
      - { element: tree, id: elm, side: sill, at: 20% }
      - { element: hedge, panels: 3, behind: elm }
`;

describe('the list of scenery', () => {
  it('takes groups apart into their members, each with the box of its group', () => {
    const { scenery } = read(GROUP);
    expect(scenery.map(({ id, panels }) => [id, panels])).toEqual([
      ['hedge-1', [1, 2, 3, 4]],
      ['bank/hedge-1', [3]],
      ['bank/elm', [2, 3, 4]],
    ]);
    expect(scenery[2].group).toMatchObject({
      panels: [2, 3, 4],
      width: { from: { mm: 80 }, to: { mm: 50 } },
    });
    expect(scenery[2].path).toEqual(['scenery', 1, 'members', 0]);
  });

  it('says where a member stands in a panel that its group does not', () => {
    expect(problems(GROUP.replace('panels: 3,', 'panels: 1,'))).toEqual([
      'scene.yaml:10:35: panels: the group does not stand in panel 1; it stands in 2, 3, 4',
    ]);
  });

  it('says which element behind or before is missing', () => {
    expect(problems('scenery: [{ element: hedge, behind: elm }, tree]')).toEqual([
      'scene.yaml:1:37: behind: there is no element "elm"; there is tree-1',
    ]);
  });

  it('reads a corner, a stretch, a scatter and treatments', () => {
    const [element] = read(
      `scenery: [{ element: hedge, side: sill-right, along: left to 40%,
        scatter: { count: 4 }, treat: { "left half": raise, window: cut } }]`,
    ).scenery;
    expect(element).toMatchObject({
      side: 'sill',
      corner: 'end',
      along: { from: { share: 0 }, to: { share: 0.4 } },
      scatter: { count: 4, gap: 2, sizes: { from: 0.8, to: 1.1 } },
      treat: [
        { part: 'window', work: 'cut' },
        { part: 'left half', work: 'raise' },
      ],
    });
  });

  it('gives loose pieces and backings their cards and usual mounts', () => {
    const { scenery, backings } = read(
      `stocks: { foil: { colour: gold } }
scenery:
  - { element: hedge, loose: { card: foil, mount: spacer } }
  - { element: hedge, loose: { mount: pad } }
backings: [{ panels: 2, card: foil, behind: hedge-1 }]`,
    );
    expect(scenery[0].loose).toMatchObject({ standOff: 6, card: { name: 'foil' }, place: 'front' });
    expect(scenery[1].loose).toMatchObject({ standOff: 2, card: null });
    expect(backings).toMatchObject([{ id: 'backing-1', behind: 'hedge-1', glue: 4 }]);
  });

  it('says what a backing cannot lie behind', () => {
    expect(
      problems('scenery: [hedge]\nbackings: [{ panels: 5, card: red, behind: hedge-1 }]'),
    ).toEqual([
      'scene.yaml:2:22: panels: "hedge-1" does not stand in panel 5; it stands in 1, 2, 3, 4',
    ]);
  });
});
