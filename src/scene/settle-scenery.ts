import { elementIds, idClashes } from './element-ids.js';
import { type ElementSaid, type EntrySaid, type GroupSaid, isGroupSaid } from './element-schema.js';
import { inDrawingOrder } from './order.js';
import type { GroupBox, Loose, SceneElement, Stock } from './scene.js';

/** Something wrong with an entry that only the whole list shows. */
export interface SceneryFault {
  readonly path: readonly (string | number)[];
  readonly message: string;
}

export interface Settled {
  readonly scenery: readonly SceneElement[];
  readonly faults: readonly SceneryFault[];
}

interface Setting {
  /** Panels of what says none. */
  readonly panels: readonly number[];
  readonly group: GroupBox | null;
  readonly prefix: string;
  readonly path: readonly (string | number)[];
}

/**
 * The scenery as one list from back to front: ids found, groups taken apart into their members,
 * `behind` and `before` carried out, cards looked up.
 * @param all the panels that an element stands in when the file says none.
 */
export function settleScenery(
  entries: readonly EntrySaid[],
  all: readonly number[],
  cardNamed: (name: string) => Stock,
): Settled {
  const faults: SceneryFault[] = [];
  const settle = (said: readonly EntrySaid[], setting: Setting): SceneElement[] => {
    const ids = elementIds(said).map((id) => `${setting.prefix}${id}`);
    const listed = said.map((entry, i) => ({
      id: ids[i],
      entry,
      path: [...setting.path, i],
      behind: entry.behind === undefined ? undefined : `${setting.prefix}${entry.behind}`,
      before: entry.before === undefined ? undefined : `${setting.prefix}${entry.before}`,
    }));
    const { ordered, faults: orderFaults } = inDrawingOrder(listed);
    for (const { entry, key, message } of orderFaults) {
      faults.push({ path: [...setting.path, entry, key], message });
    }
    return ordered.flatMap(({ id, entry, path }) =>
      isGroupSaid(entry) ? membersOf(entry, id, path, setting) : one(entry, id, path, setting),
    );
  };
  const membersOf = (
    entry: GroupSaid,
    id: string,
    path: Setting['path'],
    setting: Setting,
  ): SceneElement[] => {
    const { members, element: _, id: __, behind: ___, before: ____, ...box } = entry;
    const panels = entry.panels ?? setting.panels;
    members.forEach((member, i) => {
      const stray = member.panels?.find((panel) => !panels.includes(panel));
      if (stray === undefined) return;
      faults.push({
        path: [...path, 'members', i, 'panels'],
        message: `panels: the group does not stand in panel ${stray}; it stands in ${panels.join(', ')}`,
      });
    });
    for (const { entry } of idClashes(members)) {
      const message = 'id: another element of the group has this id too; change one';
      faults.push({ path: [...path, 'members', entry, 'id'], message });
    }
    return settle(members, {
      panels,
      group: { ...box, panels },
      prefix: `${id}/`,
      path: [...path, 'members'],
    });
  };
  const one = (
    said: ElementSaid,
    id: string,
    path: Setting['path'],
    { panels, group }: Setting,
  ): SceneElement => {
    const { behind: _, before: __, ...element } = said;
    const stands = said.panels ?? panels;
    return { ...element, id, path, panels: stands, group, loose: looseOf(said, cardNamed) };
  };
  return {
    scenery: settle(entries, { panels: all, group: null, prefix: '', path: ['scenery'] }),
    faults,
  };
}

/** Null card: that of its panel, which differs from panel to panel. */
function looseOf({ loose }: ElementSaid, cardNamed: (name: string) => Stock): Loose | null {
  if (loose === null) return null;
  return { ...loose, card: loose.card === undefined ? null : cardNamed(loose.card) };
}
