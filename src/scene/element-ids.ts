/** An entry of the scenery list as far as its id goes. */
export interface Named {
  readonly id?: string | undefined;
  readonly element: string;
}

/**
 * The id of each entry: its own, or else its element's name and its number among all of its kind
 * (`hedge-1`, `hedge-2`), so that scenery of another kind, or an id given to one, changes no other.
 */
export function elementIds(entries: readonly Named[]): string[] {
  const counts = new Map<string, number>();
  return entries.map(({ id, element }) => {
    const number = (counts.get(element) ?? 0) + 1;
    counts.set(element, number);
    return id ?? `${element}-${number}`;
  });
}

/** The entries (by index) whose id another entry has too, each with the other's index. */
export function idClashes(entries: readonly Named[]): { readonly entry: number; other: number }[] {
  const firstWith = new Map<string, number>();
  const clashes: { entry: number; other: number }[] = [];
  for (const [entry, id] of elementIds(entries).entries()) {
    const other = firstWith.get(id);
    if (other === undefined) firstWith.set(id, entry);
    // Of two that clash, one at least was named by hand: that one is to be changed.
    else if (entries[entry].id === undefined) clashes.push({ entry: other, other: entry });
    else clashes.push({ entry, other });
  }
  return clashes;
}
