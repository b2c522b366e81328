import { belowLimits } from './below-limits.js';
import { drawnAmiss } from './drawn-amiss.js';
import { dropOut } from './drop-out.js';
import { edgeShows } from './edge-shows.js';
import { edges } from './edges.js';
import { type Checked, type Finding, gravestFirst, type Rule } from './finding.js';
import { glueZone } from './glue-zone.js';
import { heavyCrown } from './heavy-crown.js';
import { lightnessSteps } from './lightness.js';
import { bracedWeb, narrowWeb } from './narrow-web.js';
import { standingAngle } from './open-angle.js';
import { openView } from './open-view.js';
import { polylineOutline } from './polyline-outline.js';
import { reliefUnderTab } from './relief-under-tab.js';
import {
  stencilDepth,
  stencilFilled,
  stencilLeftOut,
  stencilPattern,
  stencilWithout,
} from './stencil-forms.js';
import { tabWidth } from './tab-width.js';

const RULES: readonly Rule[] = [
  drawnAmiss,
  dropOut,
  narrowWeb,
  bracedWeb,
  belowLimits,
  standingAngle,
  tabWidth,
  reliefUnderTab,
  stencilWithout,
  stencilLeftOut,
  stencilFilled,
  stencilPattern,
  stencilDepth,
  edgeShows,
  glueZone,
  openView,
  edges,
  heavyCrown,
  polylineOutline,
  lightnessSteps,
];

/** Everything that a careful maker would notice before cutting, gravest first. */
export const checkBook = (checked: Checked): Finding[] =>
  gravestFirst(RULES.flatMap((rule) => rule(checked)));
