import type { TrialCard, TrialMeans } from './card.js';
import { combCard } from './comb.js';
import { foldCard } from './folds.js';
import { squareCard } from './ladders.js';
import { bladeCard, embossCard, hasSpacing, overcutCard } from './patches.js';

/** The trial cards that say something of a process, in the order in which they are read. */
export function trialCards(means: TrialMeans): readonly TrialCard[] {
  const { process } = means;
  switch (process.kind) {
    case 'knife':
      return [
        squareCard(means),
        bladeCard(means, process),
        overcutCard(means, process),
        foldCard(means, process),
        ...(hasSpacing(process) ? [embossCard(means, process)] : []),
      ];
    case 'laser':
      return [
        combCard(means, process),
        squareCard(means),
        foldCard(means, process),
        ...(hasSpacing(process) ? [embossCard(means, process)] : []),
      ];
    case 'press':
      return [squareCard(means)];
  }
}
