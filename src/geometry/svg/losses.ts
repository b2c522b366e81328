import type { Element } from './element.js';
import { nameOf, SvgImportError, shortened } from './error.js';
import type { Warnings } from './warnings.js';

/** What is drawn by other programs but not carried over, and what its maker can do about it. */

const TEXT = 'text is left out. Convert it to paths first.';
const ANIMATION = 'animation is left out: the drawing is taken as it stands at the start.';
const FOREIGN = 'what is not SVG is left out. Redraw it as paths.';

const LOST: Readonly<Record<string, string>> = {
  image: 'a picture made of pixels is left out. Trace it to paths first.',
  text: TEXT,
  tspan: TEXT,
  textPath: TEXT,
  foreignObject: FOREIGN,
  iframe: FOREIGN,
  video: FOREIGN,
  audio: FOREIGN,
  canvas: FOREIGN,
  script: 'a script is never run: what it would draw is left out.',
  animate: ANIMATION,
  animateColor: ANIMATION,
  animateMotion: ANIMATION,
  animateTransform: ANIMATION,
  set: ANIMATION,
};

/** What is lost of an element of this name, and the cure; undefined for one that is carried over. */
export const lossOf = (name: string): string | undefined =>
  Object.hasOwn(LOST, name) ? LOST[name] : undefined;

/** Elements that draw nothing where they stand. */
export const NEVER_DRAWN: ReadonlySet<string> = new Set([
  'clipPath',
  'color-profile',
  'cursor',
  'defs',
  'desc',
  'filter',
  'font',
  'font-face',
  'hatch',
  'linearGradient',
  'marker',
  'mask',
  'meshgradient',
  'metadata',
  'pattern',
  'radialGradient',
  'solidcolor',
  'style',
  'symbol',
  'title',
  'view',
]);

/** Properties that change what is seen in a way that is not carried over. */
const PROPERTIES: Readonly<Record<string, string>> = {
  mask: 'its mask is left out, so that all of it is drawn. Clip or cut the shapes instead.',
  filter: 'its filter is left out. Draw what it should look like as paths.',
  'mix-blend-mode': 'its colour is not blended with what lies below.',
  'transform-origin':
    'its transform-origin is left out: transforms turn round the origin. Use rotate(angle, x, y).',
};

/** What each of these properties is where it changes nothing. */
const HARMLESS = /^(?:|none|normal|inherit|initial|unset|0(?:px)?\s+0(?:px)?)$/;

export function warnOfProperties(
  element: Element,
  declared: ReadonlyMap<string, string>,
  opacity: number,
  warnings: Warnings,
): void {
  for (const [property, loss] of Object.entries(PROPERTIES)) {
    if (!HARMLESS.test(declared.get(property)?.trim() ?? '')) warnings.add(property, element, loss);
  }
  warnOfOpacity(element, opacity, warnings);
}

export function warnOfOpacity(element: Element, opacity: number, warnings: Warnings): void {
  if (opacity > 0 && opacity < 1) warnings.add('opacity', element, SOLID);
}

const SOLID = 'half-clear paint counts as solid: card is either there or not.';

/** The language that drawings are read in, where they offer a choice. */
const LANGUAGE = /^\s*en\b/i;

/** Whether an element is left out because it asks for something special (SVG 2, section 5.8). */
export function isPassedOver({ attributes }: Element): boolean {
  if ((attributes.get('requiredExtensions') ?? '').trim() !== '') return true;
  const languages = attributes.get('systemLanguage');
  return languages !== undefined && !languages.split(',').some((l) => LANGUAGE.test(l));
}

/** The error for a reference that leads back to itself. */
export const circular = (element: Element, target: Element): SvgImportError =>
  new SvgImportError(
    `${nameOf(element)} refers to ${nameOf(target)}, which refers back to it without end. ` +
      'Take one of the references out.',
  );

export const notInDrawing = (target: string): string =>
  `it refers to "${shortened(target)}", which is not in the drawing.`;
