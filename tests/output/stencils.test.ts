import { describe, expect, it } from 'vitest';
import { components } from '../../src/geometry/components.js';
import { designBook } from '../../src/output/design-book.js';
import { isOwnEntry, makeBook } from '../../src/output/make-book.js';
import { pieceFiles } from '../../src/output/svg-files.js';
import { PREVIEW } from './told-book.js';

const LOCK = `title: Gates at low water
process: laser
panels: 3
window: { shape: rectangle, width: 110, height: 80 }
stocks:
  slate: { colour: "#3b4252", grammage: 240 }
  greyboard: { colour: "#9a958c", grammage: 600, caliper: 0.6 }
cards: slate
scenery:
  - { element: lock-gate, panels: 1, frame: raise }
  - { element: moon, panels: 2, frame: sink, at: 95%, width: 40 }
`;
const STENCILS = 'stencils: { card: greyboard }\n';

const textOf = (content: unknown): string => {
  if (typeof content !== 'string') throw new Error('no text');
  return content;
};

describe('a book whose relief is pressed by stencils', async () => {
  const designed = await designBook(LOCK + STENCILS, 'scene.yaml');
  const { files, manifest } = await makeBook(designed, () => PREVIEW);
  const plates = designed.pieces.filter(({ folder }) => folder === 'stencils');
  const plain = await designBook(LOCK, 'scene.yaml');

  it('has a stencil and a counter plate for each side of each panel, in a folder of its own', () => {
    const names = plates.map(({ name }) => name);
    for (const name of [
      'panel-01-raised-stencil',
      'panel-01-raised-counter',
      'panel-01-raised-form-1',
    ])
      expect(names).toContain(name);
    expect(names).toContain('panel-02-sunk-stencil');
    expect(names.at(-1)).toBe('stencil-corner');
    for (const name of names) expect(files.has(`stencils/${name}.svg`)).toBe(true);
    expect(isOwnEntry('stencils')).toBe(true);
    expect(plain.pieces.filter(({ folder }) => folder === 'stencils')).toEqual([]);
  });

  it('cuts them from the board on sheets of their own', () => {
    const boards = manifest.sheets.filter(({ stock }) => stock === 'greyboard');
    const cut = boards.flatMap(({ pieces }) => pieces.map(({ name }) => name));
    expect(new Set(cut)).toEqual(new Set(plates.map(({ name }) => name)));
    expect(cut).toHaveLength(plates.reduce((sum, { copies }) => sum + copies, 0));
  });

  it('draws no relief for the machine, and keeps it in the files of the panels', () => {
    const steps = (book: typeof designed) =>
      book.jobs.flatMap(({ faces }) => faces.flatMap((face) => face.steps));
    expect(steps(plain).some(({ operation }) => operation === 'emboss')).toBe(true);
    expect(steps(designed).filter(({ operation }) => operation === 'emboss')).toEqual([]);
    for (const [path, content] of files)
      if (path.startsWith('sheets/') && path.endsWith('.svg'))
        expect(textOf(content)).not.toContain('id="emboss"');
    expect(textOf(files.get('panels/panel-01-back.svg'))).toContain('id="emboss"');
    const panels = ({ pieces }: typeof designed) =>
      pieces.filter(({ folder }) => folder === 'panels').map((piece) => pieceFiles(piece));
    expect(panels(designed)).toEqual(panels(plain));
  });

  it('lets nothing fall out, and finds no fault with its plates', () => {
    for (const { card } of plates) expect(components(card)).toHaveLength(1);
    expect(designed.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const amiss = designed.findings.filter(({ where }) =>
      plates.some(({ name }) => name === where.piece),
    );
    expect(amiss).toEqual([]);
  });
});
