import { drawnAmiss } from './drawn-amiss.js';
import { dropOut } from './drop-out.js';
import { edgeShows } from './edge-shows.js';
import { edges } from './edges.js';
import type { Checked, Finding, Rule, Severity } from './finding.js';
import { glueZone } from './glue-zone.js';
import { heavyCrown } from './heavy-crown.js';
import { lightnessSteps } from './lightness.js';
import { bracedWeb, narrowWeb } from './narrow-web.js';
import { standingAngle } from './open-angle.js';
import { openView } from './open-view.js';
import { polylineOutline } from './polyline-outline.js';
import { reliefUnderTab } from './relief-under-tab.js';
import { stencilDepth, stencilFilled, stencilLeftOut, stencilPattern } from './stencil-forms.js';
import { tabWidth } from './tab-width.js';

const RULES: readonly Rule[] = [
  drawnAmiss,
  dropOut,
  narrowWeb,
  bracedWeb,
  standingAngle,
  tabWidth,
  reliefUnderTab,
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

const GRAVITY: Record<Severity, number> = { error: 0, warning: 1, hint: 2 };

/** Everything that a careful maker would notice before cutting, gravest first. */
export const checkBook = (checked: Checked): Finding[] =>
  RULES.flatMap((rule) => rule(checked)).sort((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity]);
