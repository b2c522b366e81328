import { type Rule, rounded } from './finding.js';

/** A glued tab narrower than this does not hold. Common practice, no source. */
const HOLDING_MM = 5;

/** End tabs hide behind the front panel's jambs, and are narrowed to fit there. */
export const tabWidth: Rule = ({ scene, book }) => {
  const { tabMm } = book.spine;
  if (tabMm >= scene.spine.tab) return [];
  return [
    {
      rule: 'tab-width',
      severity: tabMm < HOLDING_MM ? 'warning' : 'hint',
      where: { scene: ['spine', 'tab'] },
      measured: rounded(tabMm),
      wanted: rounded(scene.spine.tab),
      unit: 'mm',
      message: `The spine's end tabs are cut ${rounded(tabMm)} mm wide instead of ${rounded(scene.spine.tab)} mm, so as not to show in the front window.`,
      cure: 'Make the front window narrower or the panel wider for a broader tab.',
    },
  ];
};
