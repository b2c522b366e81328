import { rectangle } from '../../geometry/primitives.js';
import { bent, type Corner, cut, panes, person } from './kit.js';
import type { Vessel } from './vessel.js';

const SHEER: readonly Corner[] = [
  [-49, 5.6],
  [-40, 5],
  [-10, 4.8],
  [20, 4.9],
  [38, 5.8],
  [46, 7.4],
  [49.5, 9.2],
];
const CABIN = { from: -35, to: 20, foot: 4, roof: 13.4 } as const;

/** A canal boat: a long low cabin, a stove's chimney, a swan-necked tiller. */
export const narrowboat: Vessel = {
  design: { length: 100, height: 21, freeboard: 4.8 },
  sheer: SHEER,
  stern: [-46, 0],
  bow: [44, 0],
  above: (kit, crew, random) => {
    const { from, to, foot, roof } = CABIN;
    const cabin = cut(
      kit,
      [
        [from, foot],
        [from + 0.6, roof - 0.5],
        [from - 0.6, roof - 0.2],
        [from - 0.4, roof + 0.5],
        [(from + to) / 2, roof + 0.9],
        [to + 0.6, roof + 0.5],
        [to + 0.8, roof - 0.2],
        [to - 0.4, roof - 0.5],
        [to, foot],
      ],
      random.branch('cabin'),
    );
    // The cratch: a cloth drawn down over the fore deck.
    const cratch = cut(
      kit,
      [
        [to - 1, foot],
        [to - 0.5, roof - 1.6],
        [to + 8.5, roof - 2.4],
        [to + 16, foot + 1.2],
        [to + 16, foot],
      ],
      random.branch('cratch'),
    );
    const pipe = kit.at(random.branch('pipe').between(-26, -20), roof);
    const wide = kit.thick(2.2);
    const tall = Math.max(wide * 1.5, 6.2 * kit.scale.y);
    const chimney = [
      rectangle(pipe.x - wide / 2, pipe.y - tall, wide, tall + 0.5),
      rectangle(pipe.x - wide * 0.72, pipe.y - tall, wide * 1.44, wide * 0.42),
    ];
    const tiller = bent(
      kit,
      [
        [-48, 4],
        [-49.3, 8],
        [-47.6, 11.2],
        [-42, 12.4],
      ],
      1,
    );
    const cans = [-12, -7.4].map((x, i) => {
      const luck = random.branch(`can ${i}`);
      const high = luck.between(2.4, 3.2);
      return cut(
        kit,
        [
          [x - 1.7, roof],
          [x - 1.1, roof + 0.7 + high],
          [x + 1.1, roof + 0.7 + high],
          [x + 1.7, roof],
        ],
        luck,
      );
    });
    const steerer = crew ? person(kit, -40.5, 5, 14.5, [-44, 12], random.branch('crew')) : [];
    const wanted = random.branch('windows').whole(4, 6);
    return {
      solids: [cabin, cratch, ...chimney, tiller, ...cans, ...steerer],
      cuts: panes(kit, [from + 2, foot + 0.8], [to - 1, roof - 0.2], wanted, false),
      lines: [],
    };
  },
};
