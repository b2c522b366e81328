import { cardOf, cardSeries } from './card-series.js';
import { contextOf } from './context.js';
import { elementIds, idClashes, type Named } from './element-ids.js';
import type { ElementDescription } from './parameter.js';
import type { Positions } from './positions.js';
import { type Position, type Problem, SceneError, type ScenePath } from './problem.js';
import type { Scene, Stock } from './scene.js';
import { type SceneSaid, sceneSchema } from './scene-schema.js';
import { elsewhere, schemaProblems } from './schema-problems.js';
import { type SceneryFault, settleScenery } from './settle-scenery.js';
import { notAmong, quote } from './words.js';
import { isGroup, readYaml } from './yaml-text.js';

export interface ReadOptions {
  /** The file's name, for messages. */
  readonly file: string;
  /** The elements that the scenery may name. */
  readonly elements: readonly ElementDescription[];
}

export interface SceneRead {
  readonly scene: Scene;
  /**
   * Where the file says what stands at this path of its own keys and indices, such as
   * `['window', 'width']`; where it says nothing of it, the place of what would hold it.
   */
  readonly locate: (path: ScenePath) => Position;
}

/** Reads a scene file's text. Throws a `SceneError` with everything that is wrong in it. */
export function readScene(text: string, { file, elements }: ReadOptions): SceneRead {
  const { value, positions, problems } = readYaml(text);
  if (value === undefined) throw new SceneError(file, problems);
  if (!isGroup(value)) throw new SceneError(file, [...problems, noScene(value, positions)]);

  const schema = sceneSchema(contextOf(value, elements));
  const result = schema.safeParse(value, { reportInput: true });
  const found = problems.concat(
    elsewhere(schemaProblems(result.error?.issues ?? [], positions), problems),
    idProblems(value.scenery, positions),
  );
  if (!result.success || found.length > 0) throw new SceneError(file, found);
  const { scene, faults } = sceneOf(result.data, elements);
  if (faults.length > 0) {
    throw new SceneError(
      file,
      faults.map(({ path, message }) => ({
        path: [...path],
        ...positions.value([...path]),
        message,
      })),
    );
  }
  return { scene, locate: positions.value };
}

function noScene(value: unknown, positions: Positions): Problem {
  const cure = 'a scene is made of keys with values, such as "title: Lock at dusk"';
  const is = value === null ? 'the file is empty' : `the whole file is ${sayKind(value)}`;
  return { path: [], ...positions.value([]), message: `${is}; ${cure}` };
}

const sayKind = (value: unknown): string =>
  Array.isArray(value) ? 'one list' : `the one value ${quote(value)}`;

/** Looks at the raw list, so that two of the same id are found whatever else is wrong. */
function idProblems(scenery: unknown, positions: Positions): Problem[] {
  if (!Array.isArray(scenery)) return [];
  const entries = scenery.map(namedIn);
  const ids = elementIds(entries);
  return idClashes(entries).map(({ entry, other }) => {
    const path = ['scenery', entry, 'id'];
    const { line } = positions.value(['scenery', other, 'id']);
    const message = `id: ${quote(ids[entry])} is the id of the element on line ${line} too; change one`;
    return { path, ...positions.value(path), message };
  });
}

function namedIn(entry: unknown): Named {
  if (!isGroup(entry)) return { element: String(entry) };
  const id = typeof entry.id === 'string' ? entry.id : undefined;
  return { id, element: String(entry.element) };
}

/** Looks up names and counts out what is said once for all panels. */
function sceneOf(
  said: SceneSaid,
  elements: readonly ElementDescription[],
): { scene: Scene; faults: readonly SceneryFault[] } {
  const stocks = new Map<string, Stock>(
    Object.entries(said.stocks).map(([name, stock]) => [name, { name, ...stock }]),
  );
  const cards = cardSeries(said.cards, stocks, said.panels);
  const cardNamed = (name: string) => cardOf(name, stocks);
  const windowed = Array.from({ length: said.panels - 1 }, (_, i) => i + 1);
  const { scenery, faults } = settleScenery(said.scenery, windowed, cardNamed);
  const { pitch, angle, tab, scoring, card } = said.spine;
  const { stencils } = said;
  const scene: Scene = {
    title: said.title,
    unit: said.unit,
    seed: said.seed,
    process: said.process,
    panel: said.panel,
    panels: said.panels,
    spacing: said.spacing,
    readingDistance: said.reading,
    windows: said.window,
    spine: {
      ...(pitch === undefined ? {} : { pitch }),
      ...(angle === undefined ? {} : { angleDeg: angle }),
      tab,
      scoring,
    },
    cards,
    spineCard: card === undefined ? cards[0] : cardOf(card, stocks),
    strokes: said.strokes,
    detail: said.detail,
    ballMm: said.ball,
    scenery,
    backings: said.backings.map(({ id, card, behind, part, ...backing }, i) => ({
      ...backing,
      id: id ?? `backing-${i + 1}`,
      card: cardNamed(card),
      behind: behind ?? null,
      part: part ?? null,
    })),
    stencils: stencils === undefined ? null : { ...stencils, card: cardNamed(stencils.card) },
  };
  return { scene, faults: [...faults, ...backingFaults(scene, elements)] };
}

/** Backings behind what is not there, or in panels where it is not. */
function backingFaults(
  { scenery, backings }: Scene,
  elements: readonly ElementDescription[],
): SceneryFault[] {
  return backings.flatMap(({ behind, part, panels }, i): SceneryFault[] => {
    if (behind === null) return [];
    const element = scenery.find(({ id }) => id === behind);
    if (element === undefined) {
      const ids = scenery.map(({ id }) => id);
      const message = `behind: ${notAmong(behind, ids)}`;
      return [{ path: ['backings', i, 'behind'], message }];
    }
    const parts = elements.find(({ name }) => name === element.element)?.parts ?? [];
    if (part !== null && !parts.includes(part)) {
      const message =
        parts.length > 0
          ? `part: ${notAmong(part, parts)}`
          : `part: ${element.element} has no parts of its own; take this out`;
      return [{ path: ['backings', i, 'part'], message }];
    }
    const stray = panels.find((panel) => !element.panels.includes(panel));
    if (stray === undefined) return [];
    const message = `panels: ${quote(behind)} does not stand in panel ${stray}; it stands in ${element.panels.join(', ')}`;
    return [{ path: ['backings', i, 'panels'], message }];
  });
}
