/** An element of the file, its attributes decoded. */
export interface Element {
  /** Without prefix where it is SVG's own; elements of other vocabularies keep theirs. */
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly Element[];
  readonly parent: Element | null;
  /** The text directly in it. */
  readonly text: string;
  readonly line: number;
}
