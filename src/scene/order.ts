/** An entry that may say what it stands behind or before. */
export interface Ordered {
  readonly id: string;
  readonly behind?: string | undefined;
  readonly before?: string | undefined;
}

/** What keeps an entry from its place: the entry, by index, the key at fault and why. */
export interface OrderFault {
  readonly entry: number;
  readonly key: 'behind' | 'before';
  readonly message: string;
}

/**
 * The entries from back to front: as listed, save that one with `behind` or `before` comes just
 * before or just after the one that it names. Whoever is named is put in place first.
 */
export function inDrawingOrder<T extends Ordered>(
  entries: readonly T[],
): { readonly ordered: readonly T[]; readonly faults: readonly OrderFault[] } {
  const faults: OrderFault[] = [];
  const ordered = entries.filter((e) => wordOf(e) === null);
  let waiting = entries.filter((e) => wordOf(e) !== null);
  while (waiting.length > 0) {
    const ready = waiting.filter((e) => ordered.some(({ id }) => id === wordOf(e)?.id));
    if (ready.length === 0) break;
    for (const entry of ready) {
      const { key, id } = wordOf(entry) as Word;
      const place = ordered.findIndex((other) => other.id === id);
      ordered.splice(key === 'behind' ? place : place + 1, 0, entry);
    }
    waiting = waiting.filter((e) => !ready.includes(e));
  }
  for (const entry of waiting) {
    const { key, id } = wordOf(entry) as Word;
    const known = entries.some((other) => other.id === id);
    faults.push({
      entry: entries.indexOf(entry),
      key,
      message: known
        ? `${key}: "${id}" and this element wait for each other; take one of the two out`
        : `${key}: there is no element "${id}"; there is ${entries
            .filter((other) => other !== entry)
            .map((other) => other.id)
            .join(', ')}`,
    });
  }
  return { ordered, faults };
}

interface Word {
  readonly key: 'behind' | 'before';
  readonly id: string;
}

function wordOf({ behind, before }: Ordered): Word | null {
  if (behind !== undefined) return { key: 'behind', id: behind };
  return before === undefined ? null : { key: 'before', id: before };
}
