import type { Process } from '../process/process.js';
import type { SheetJob } from '../sheet/job.js';
import { type Finding, gravestFirst } from './finding.js';
import { bluntDetail } from './job/blunt-detail.js';
import { doubleLine } from './job/double-line.js';
import type { JobRule, JobsRule } from './job/job-rule.js';
import { lostHole } from './job/lost-hole.js';
import { nibs } from './job/nibs.js';
import { offBed } from './job/off-bed.js';
import { openCut } from './job/open-cut.js';
import { scorchedLace } from './job/scorched-lace.js';
import { sharedEdge } from './job/shared-edge.js';
import { wrongFace } from './job/wrong-face.js';

const SHEET_RULES: readonly JobRule[] = [openCut, offBed, wrongFace, doubleLine, scorchedLace];
const JOINT_RULES: readonly JobsRule[] = [lostHole, bluntDetail, nibs, sharedEdge];

/** What a careful maker would notice of the sheets before the machine runs, gravest first. */
export const checkJobs = (jobs: readonly SheetJob[], process: Process): Finding[] =>
  gravestFirst([
    ...jobs.flatMap((job) => SHEET_RULES.flatMap((rule) => rule(job, process))),
    ...JOINT_RULES.flatMap((rule) => rule(jobs, process)),
  ]);
