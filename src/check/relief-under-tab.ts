import { intersect } from '../geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../geometry/measure.js';
import { rectangle } from '../geometry/primitives.js';
import { type Finding, type Rule, rounded } from './finding.js';

/** Less relief than this under a tab does not keep it from lying flat. Common practice, no source. */
const LITTLE_MM2 = 4;

/** The end tabs are glued flat behind panel 1 and the backdrop, where nothing may be pressed. */
export const reliefUnderTab: Rule = ({ book, panels, pieces }) => {
  const { tabMm } = book.spine;
  const ends = [0, panels.length - 1];
  return ends.flatMap((i) => {
    const { leftX, rightX } = book.panels[i].hinge;
    return [leftX, rightX - tabMm].flatMap((x): Finding[] => {
      const strip = rectangle(x, 0, tabMm, book.height);
      const under = panels[i].reliefs.map(({ region }) => intersect(region, strip));
      const areaMm2 = under.reduce((sum, region) => sum + regionArea(region), 0);
      if (areaMm2 < LITTLE_MM2) return [];
      const box = regionBounds({ contours: under.flatMap((region) => region.contours) });
      const [atX, atY] = [rounded(x + tabMm / 2), rounded((box.minY + box.maxY) / 2)];
      return [
        {
          rule: 'relief-under-tab',
          severity: 'hint',
          where: { piece: pieces[i].name, x: atX, y: atY },
          measured: rounded(areaMm2),
          wanted: 0,
          unit: 'mm2',
          message: `${pieces[i].name} is pressed over ${rounded(areaMm2)} mm2 where an end tab of the spine is glued behind it, ${atX} mm from its left: the tab will not lie flat.`,
          cure: 'Give the element "frame: score" on this panel, move it, or press it after gluing.',
        },
      ];
    });
  });
};
