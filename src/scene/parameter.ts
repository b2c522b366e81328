/** What a scenery element can be told, as plain data: the scene file, the editor's schema, the
 * list of shapes and the elements themselves all read this one description. */
export type Parameter =
  | LengthParameter
  | NumberParameter
  | ChoiceParameter
  | FlagParameter
  | TextParameter
  | FileParameter;

interface Described {
  /** One sentence for the maker: what it changes. */
  readonly says: string;
}

/** A length; in the scene file in the file's unit, everywhere else in millimetres. */
export interface LengthParameter extends Described {
  readonly kind: 'length';
  readonly default: number;
  readonly min: number;
  readonly max: number;
}

export interface NumberParameter extends Described {
  readonly kind: 'number';
  readonly default: number;
  readonly min: number;
  readonly max: number;
  /** Whole numbers only. */
  readonly whole?: boolean;
}

export interface ChoiceParameter extends Described {
  readonly kind: 'choice';
  readonly options: readonly string[];
  readonly default: string;
}

export interface FlagParameter extends Described {
  readonly kind: 'flag';
  readonly default: boolean;
}

/** One line of writing. */
export interface TextParameter extends Described {
  readonly kind: 'text';
  readonly default: string;
  readonly maxCharacters: number;
}

/** A file that the element draws from; in the scene its path from the scene file's own folder. */
export interface FileParameter extends Described {
  readonly kind: 'file';
  readonly of: 'drawing' | 'font';
  /** Empty where the element can do without. */
  readonly default: string;
}

export type Parameters = Readonly<Record<string, Parameter>>;

/** The values an element receives for its parameters: defaults filled in, lengths in mm. */
export type ValuesOf<P extends Parameters> = string extends keyof P
  ? Readonly<Record<string, number | string | boolean>>
  : {
      readonly [K in keyof P]: P[K] extends ChoiceParameter
        ? P[K]['options'][number]
        : P[K] extends FlagParameter
          ? boolean
          : P[K] extends TextParameter | FileParameter
            ? string
            : number;
    };

/** Sides of the window that scenery can grow from: bottom, top and the two jambs. */
export const SIDES = ['sill', 'head', 'left', 'right'] as const;
export type Side = (typeof SIDES)[number];

/** The corners of the window: a side and the end of it where the corner lies. */
export const CORNERS = ['sill-left', 'sill-right', 'head-left', 'head-right'] as const;
export type Corner = (typeof CORNERS)[number];

/** A length, or a share of the window's edge (0.4 = 40 %) that is resolved panel by panel. */
export type Extent = { readonly mm: number } | { readonly share: number };

/** What the scene room needs to know of a scenery element to read it from a file. */
export interface ElementDescription {
  readonly name: string;
  /** One sentence for the maker: what it draws. */
  readonly says: string;
  readonly sides: readonly Side[];
  readonly defaultSide: Side;
  /** Size when the scene names none. */
  readonly defaultSize: { readonly width: Extent; readonly height: Extent };
  readonly parameters: Parameters;
  /** What of it is cut, scored and embossed: a few words each for the maker, null for nothing. */
  readonly made: {
    readonly cut: string | null;
    readonly scored: string | null;
    readonly embossed: string | null;
  };
  /** Names of parts that can be treated by themselves, such as crown and trunk. */
  readonly parts?: readonly string[];
}
