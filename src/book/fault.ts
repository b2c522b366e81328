/** Something about the structure that cannot be built, and the place in the scene that asks for it. */
export interface Fault {
  /** Keys into the scene file, such as `['window', 'width']`. */
  readonly path: readonly (string | number)[];
  readonly message: string;
}

/** All faults of a plan at once. */
export class PlanError extends Error {
  constructor(readonly faults: readonly Fault[]) {
    super(faults.map((f) => f.message).join('\n'));
    this.name = 'PlanError';
  }
}
