/** Stroke colour of each operation as #rrggbb. Machines go by the groups' ids, not by these. */
export interface LayerColours {
  readonly emboss: string;
  readonly fold: string;
  readonly detail: string;
  readonly cut: string;
  readonly guide: string;
}

export const LAYER_COLOURS: LayerColours = {
  emboss: '#b0812a',
  fold: '#2f6f5e',
  detail: '#5b7fa3',
  cut: '#7a1f4b',
  guide: '#8a8f98',
};
