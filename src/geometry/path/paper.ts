let scope: Promise<paper.PaperScope> | undefined;

/**
 * paper.js, set up once with a project that draws nowhere. It is slow to load, so that it is
 * fetched only when first asked for.
 */
export function paperScope(): Promise<paper.PaperScope> {
  scope ??= import('paper-jsdom').then(({ default: library }) => {
    const own = new library.PaperScope();
    own.setup(new own.Size(1, 1));
    return own;
  });
  return scope;
}
