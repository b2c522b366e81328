import { planBook } from '../../book/plan.js';
import { composePanel } from '../../panel/compose.js';
import { PROCESS_LIMITS } from '../../process/limits.js';
import { readScene } from '../../scene/read.js';
import { FAMILIES, familiesByName } from '../../scenery/catalogue.js';
import type { Family } from '../../scenery/family.js';
import { explodedSvg } from './exploded.js';

/** Samples of each form, side by side, so that kinship and variety show. */
const SEEDS_A_FORM = 3;
/** As many samples as one book has panels for, its backdrop taken off. */
const MOST_SAMPLES = 23;

/** A sample book: one element alone in each panel, in windows of one size. */
const FORMAT = `panel: { width: 150, height: 132 }
spacing: 12
window: { shape: rectangle, width: 100, height: 100, sill: 22, step: 0 }
cards: "#3f4d4a"
`;

/**
 * A picture of scenery in its usual size, each sample cut in a window of its own: every family
 * once, or, of a single family, every form with several seeds.
 */
export function samplesSvg(families: readonly Family[]): string {
  const samples = (
    families.length === 1 ? formsOf(families[0]) : families.map((f) => `element: ${f.name}`)
  ).slice(0, MOST_SAMPLES);
  const lines = samples.map((sample, i) => `  - { ${sample}, panels: ${i + 1} }`);
  const text = `${FORMAT}panels: ${samples.length + 1}\nscenery:\n${lines.join('\n')}\n`;
  const { scene } = readScene(text, { file: 'samples', elements: FAMILIES });
  const book = planBook(scene);
  const limits = PROCESS_LIMITS[scene.process];
  const panels = book.panels
    .slice(0, samples.length)
    .map((plan) => composePanel(scene, book, plan, familiesByName, limits));
  return explodedSvg(book, panels);
}

/** Each option of the family's first choice, with several seeds; of one without, seeds alone. */
function formsOf(family: Family): string[] {
  const choice = Object.entries(family.parameters).find(([, p]) => p.kind === 'choice');
  const forms =
    choice?.[1].kind === 'choice'
      ? choice[1].options.map((option) => `, ${choice[0]}: ${option}`)
      : [''];
  const seeds = Array.from({ length: SEEDS_A_FORM }, (_, i) => i);
  return forms.flatMap((form) =>
    seeds.map((seed) => `element: ${family.name}${form}, seed: ${seed}`),
  );
}
