import type { LayerColours } from '../../scene/layer-colours.js';
import type { QuoteRow } from '../../sheet/quote.js';
import type { CardUse, Costs, EstimateRow } from './costs.js';
import { type Block, space } from './flow.js';
import { text } from './leaf.js';
import { heading } from './parts.js';
import { BODY, NUMBER, type Paper, TOTAL } from './style.js';
import { type Cell, columns, headOf, rowOf } from './table.js';
import { duration, grouped } from './words.js';
import { swatch } from './working-order.js';

const number = { align: 'right', style: NUMBER } as const;
const MM2_PER_CM2 = 100;

/** How long one book takes, the card that goes into it, and what orders of several come to. */
export const costPages = (costs: Costs, colours: LayerColours, paper: Paper): Block[] => [
  ...timeTable(costs, colours, paper),
  space(10),
  ...cardTable(costs.cards, paper),
  ...quoteTable(costs, paper),
];

function timeTable({ steps, stopSeconds }: Costs, colours: LayerColours, paper: Paper): Block[] {
  const cols = columns(paper.left, paper.right, [
    { title: 'Sheet', width: 24 },
    { title: 'Face', width: 18 },
    { title: 'Operation', width: 0 },
    { title: 'Path, mm', width: 24, ...number },
    { title: 'Travel, mm', width: 24, ...number },
    { title: 'Corners', width: 20, ...number },
    { title: 'Time', width: 30, ...number },
  ]);
  const head = headOf(cols);
  const rows = steps.map((step, i) => {
    const isFirst = steps[i - 1]?.sheet !== step.sheet;
    const cells: Cell[] = [
      isFirst ? step.sheet : '',
      step.face,
      swatch(step.operation, colours[step.operation]),
      ...figures(step),
    ];
    return rowOf(cols, cells, { head, keepsNext: steps[i + 1]?.sheet === step.sheet });
  });
  const sum = (of: (step: EstimateRow) => number): number => steps.reduce((n, s) => n + of(s), 0);
  const seconds = sum((s) => s.seconds) + stopSeconds;
  const stops: Cell = (x, baseline) => [
    text(x, baseline, 'Changing tools and turning sheets', BODY),
  ];
  const all = figures({
    cutMm: sum((s) => s.cutMm),
    travelMm: sum((s) => s.travelMm),
    corners: sum((s) => s.corners),
    seconds,
  });
  return [
    ...heading(
      'Time for one book',
      'At the speeds of the process, all passes counted.',
      paper.left,
    ),
    head,
    ...rows,
    rowOf(cols, [stops, '', '', '', '', '', duration(stopSeconds)], { head, keepsNext: true }),
    rowOf(cols, ['Total', '', '', ...all], { head, style: TOTAL }),
  ];
}

const figures = (s: Pick<EstimateRow, 'cutMm' | 'travelMm' | 'corners' | 'seconds'>): string[] => [
  grouped(s.cutMm),
  grouped(s.travelMm),
  grouped(s.corners),
  duration(s.seconds),
];

function cardTable(cards: readonly CardUse[], paper: Paper): Block[] {
  const cols = columns(paper.left, paper.right, [
    { title: 'Card', width: 0 },
    { title: 'Sheets', width: 20, ...number },
    { title: 'Used, cm²', width: 30, ...number },
    { title: 'Wasted, cm²', width: 30, ...number },
    { title: 'Wasted', width: 22, ...number },
  ]);
  const head = headOf(cols);
  const cells = ({ stock, sheets, usedMm2, wastedMm2 }: CardUse): string[] => [
    stock,
    grouped(sheets),
    grouped(usedMm2 / MM2_PER_CM2),
    grouped(wastedMm2 / MM2_PER_CM2),
    `${grouped((100 * wastedMm2) / (usedMm2 + wastedMm2))} %`,
  ];
  return [
    ...heading('Card for one book', 'Windows and holes count as waste.', paper.left),
    head,
    ...cards.map((card, i) => rowOf(cols, cells(card), { head, keepsNext: i + 1 < cards.length })),
  ];
}

function quoteTable({ quote, currency }: Costs, paper: Paper): Block[] {
  if (quote.length === 0) return [];
  const money = ['Set-up', 'Machine', 'Card', 'Total', 'Each'].map((title) => ({
    title,
    width: title === 'Set-up' || title === 'Card' ? 20 : 25,
    ...number,
  }));
  const cols = columns(paper.left, paper.right, [
    { title: 'Copies', width: 14, style: NUMBER },
    { title: 'Sheets', width: 14, ...number },
    { title: 'Time', width: 0, ...number },
    ...money,
  ]);
  const head = headOf(cols);
  const cells = ({ copies, sheets, minutes, price }: QuoteRow): string[] => [
    grouped(copies),
    grouped(sheets),
    duration(minutes * 60),
    ...(price === null
      ? money.map(() => '')
      : [price.setUp, price.machine, price.card, price.total, price.each].map((sum) =>
          grouped(sum, 2),
        )),
  ];
  const note = `By the rates of the process${currency === '' ? '' : `, in ${currency}`}.`;
  return [
    space(10),
    ...heading('Several copies', note, paper.left),
    head,
    ...quote.map((row, i) => rowOf(cols, cells(row), { head, keepsNext: i + 1 < quote.length })),
  ];
}
