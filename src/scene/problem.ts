/** Where something stands in the scene file: its keys and list indices (from 0), outermost first. */
export type ScenePath = readonly (string | number)[];

/** A place in the text; both count from 1, columns in UTF-16 code units as editors do. */
export interface Position {
  readonly line: number;
  readonly column: number;
}

/** One thing that is wrong in a scene file, where, and the cure. */
export interface Problem extends Position {
  readonly path: ScenePath;
  readonly message: string;
}

/** The customary `file:line:column: message` that editors and terminals can jump to. */
export const sayProblem = (file: string, { line, column, message }: Problem): string =>
  `${file}:${line}:${column}: ${message}`;

/** Everything that is wrong in a scene file, in the file's own order; its message has a line each. */
export class SceneError extends Error {
  override readonly name = 'SceneError';
  readonly file: string;
  readonly problems: readonly Problem[];

  constructor(file: string, problems: readonly Problem[]) {
    const inOrder = problems.toSorted((a, b) => a.line - b.line || a.column - b.column);
    super(inOrder.map((problem) => sayProblem(file, problem)).join('\n'));
    this.file = file;
    this.problems = inOrder;
  }
}
