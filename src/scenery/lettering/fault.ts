/** Something that cannot be lettered as asked; the message is for the maker. */
export class LetteringError extends Error {
  constructor(
    message: string,
    /** What to do about it. */
    readonly cure: string,
  ) {
    super(message);
    this.name = 'LetteringError';
  }
}
