import { describe, expect, it } from 'vitest';
import { elementIds, idClashes } from '../../src/scene/element-ids.js';

describe('elementIds', () => {
  it('numbers each kind on its own', () => {
    const entries = [{ element: 'hedge' }, { element: 'tree' }, { element: 'hedge' }];
    expect(elementIds(entries)).toEqual(['hedge-1', 'tree-1', 'hedge-2']);
  });

  it('changes no other id when one element is named', () => {
    const entries = [{ element: 'hedge', id: 'towpath' }, { element: 'hedge' }];
    expect(elementIds(entries)).toEqual(['towpath', 'hedge-2']);
  });
});

describe('idClashes', () => {
  it('points at the later of two named alike', () => {
    const entries = [
      { element: 'hedge', id: 'a' },
      { element: 'tree', id: 'a' },
    ];
    expect(idClashes(entries)).toEqual([{ entry: 1, other: 0 }]);
  });

  it('points at the one named by hand when the other was only numbered', () => {
    const entries = [{ element: 'tree', id: 'hedge-1' }, { element: 'hedge' }];
    expect(idClashes(entries)).toEqual([{ entry: 0, other: 1 }]);
  });
});
