import { birds } from './birds.js';
import { boards } from './boards.js';
import { boat } from './boat.js';
import { branches } from './branches.js';
import { brick } from './brick.js';
import { bridge } from './bridge.js';
import { bush } from './bush.js';
import { climber } from './climber.js';
import { clouds } from './clouds.js';
import { cottage } from './cottage.js';
import { curtain } from './curtain.js';
import type { Family } from './family.js';
import { fence } from './fence.js';
import { fern } from './fern.js';
import { flowers } from './flowers.js';
import { grass } from './grass.js';
import { hedge } from './hedge.js';
import { hills } from './hills.js';
import { house } from './house.js';
import { ivy } from './ivy.js';
import { lamp } from './lamp.js';
import { lattice } from './lattice.js';
import { lettering } from './lettering.js';
import { lockGate } from './lock-gate.js';
import { moon } from './moon.js';
import { motif } from './motif.js';
import { mountains } from './mountains.js';
import { paving } from './paving.js';
import { pergola } from './pergola.js';
import { plain } from './plain.js';
import { railings } from './railings.js';
import { rocks } from './rocks.js';
import { scallops } from './scallops.js';
import { seaweed } from './seaweed.js';
import { snow } from './snow.js';
import { stars } from './stars.js';
import { stone } from './stone.js';
import { tiles } from './tiles.js';
import { tower } from './tower.js';
import { tree } from './tree.js';
import { viaduct } from './viaduct.js';
import { wall } from './wall.js';
import { water } from './water.js';
import { waves } from './waves.js';

/** Every kind of scenery that a scene can ask for, by name. */
export const FAMILIES: readonly Family[] = [
  hedge,
  tree,
  bush,
  climber,
  ivy,
  grass,
  brick,
  stone,
  boards,
  tiles,
  paving,
  wall,
  house,
  tower,
  lockGate,
  bridge,
  cottage,
  water,
  hills,
  mountains,
  rocks,
  motif,
  viaduct,
  fence,
  railings,
  moon,
  stars,
  clouds,
  flowers,
  lettering,
  lamp,
  boat,
  pergola,
  plain,
  curtain,
  branches,
  lattice,
  scallops,
  waves,
  snow,
  fern,
  seaweed,
  birds,
];

export const familiesByName: ReadonlyMap<string, Family> = new Map(
  FAMILIES.map((family) => [family.name, family]),
);
