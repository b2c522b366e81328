import { describe, expect, it } from 'vitest';
import { inDrawingOrder } from '../../src/scene/order.js';

const ids = (entries: Parameters<typeof inDrawingOrder>[0]) =>
  inDrawingOrder(entries).ordered.map(({ id }) => id);

describe('inDrawingOrder', () => {
  it('keeps the order of the list where nothing else is said', () => {
    expect(ids([{ id: 'a' }, { id: 'b' }, { id: 'c' }])).toEqual(['a', 'b', 'c']);
  });

  it('puts an entry just behind or just before the one that it names', () => {
    expect(ids([{ id: 'a' }, { id: 'b' }, { id: 'c', behind: 'a' }])).toEqual(['c', 'a', 'b']);
    expect(ids([{ id: 'a', before: 'b' }, { id: 'b' }, { id: 'c' }])).toEqual(['b', 'a', 'c']);
  });

  it('follows chains', () => {
    const chain = [{ id: 'a', behind: 'b' }, { id: 'b', before: 'c' }, { id: 'c' }];
    expect(ids(chain)).toEqual(['c', 'a', 'b']);
  });

  it('names what is not there, and what waits for itself', () => {
    const { faults } = inDrawingOrder([{ id: 'a' }, { id: 'b', behind: 'z' }]);
    expect(faults).toEqual([
      { entry: 1, key: 'behind', message: 'behind: there is no element "z"; there is a' },
    ]);
    const round = [
      { id: 'a', behind: 'b' },
      { id: 'b', behind: 'a' },
    ];
    expect(inDrawingOrder(round).faults.map(({ entry }) => entry)).toEqual([0, 1]);
  });
});
