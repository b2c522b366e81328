import { describe, expect, it } from 'vitest';
import { caliperOf } from '../../src/scene/defaults.js';
import { SHEET_NAMES, sheetSize } from '../../src/scene/sheet-size.js';

const size = (name: string) => {
  const sheet = sheetSize(name);
  return sheet && [sheet.width, sheet.height];
};

describe('sheetSize', () => {
  // ISO 216, A series, mm.
  it.each([
    ['A0', 841, 1189],
    ['A1', 594, 841],
    ['A2', 420, 594],
    ['A3', 297, 420],
    ['A4', 210, 297],
    ['A5', 148, 210],
    ['A6', 105, 148],
    ['A7', 74, 105],
    ['A8', 52, 74],
    ['A9', 37, 52],
    ['A10', 26, 37],
  ])('%s is %d x %d mm', (name, width, height) => {
    expect(size(name)).toEqual([width, height]);
  });

  // ISO 216, B series, mm.
  it.each([
    ['B0', 1000, 1414],
    ['B1', 707, 1000],
    ['B2', 500, 707],
    ['B3', 353, 500],
    ['B4', 250, 353],
    ['B5', 176, 250],
    ['B6', 125, 176],
    ['B7', 88, 125],
    ['B8', 62, 88],
    ['B9', 44, 62],
    ['B10', 31, 44],
  ])('%s is %d x %d mm', (name, width, height) => {
    expect(size(name)).toEqual([width, height]);
  });

  // Letter and Tabloid: sizes A and B of ANSI/ASME Y14.1, 8.5 x 11 in and 11 x 17 in.
  // Legal, 8.5 x 14 in: common practice, no source.
  it.each([
    ['Letter', 8.5, 11],
    ['Tabloid', 11, 17],
    ['Legal', 8.5, 14],
  ])('%s is %d x %d in', (name, widthIn, heightIn) => {
    const [width, height] = size(name)!;
    expect(width).toBeCloseTo(widthIn * 25.4, 12);
    expect(height).toBeCloseTo(heightIn * 25.4, 12);
  });

  it('holds every sheet upright, so that the grain runs along its longer side', () => {
    for (const name of SHEET_NAMES) {
      const [width, height] = size(name)!;
      expect(height).toBeGreaterThan(width!);
    }
  });

  it('knows no other names', () => {
    expect(sheetSize('A11')).toBeUndefined();
    expect(sheetSize('a4')).toBeUndefined();
    expect(sheetSize('constructor')).toBeUndefined();
  });
});

describe('caliperOf', () => {
  // ISO 534: apparent specific volume v (cm3/g) = thickness (micrometres) / grammage (g/m2).
  it.each([
    [160, 1.25, 0.2],
    [240, 1.25, 0.3],
    [300, 1.45, 0.435],
    [250, 1.15, 0.2875],
  ])('%d g/m2 at bulk %d is %d mm thick', (grams, bulk, mm) => {
    expect(caliperOf(grams, bulk)).toBeCloseTo(mm, 12);
    const micrometres = caliperOf(grams, bulk) * 1000;
    expect(micrometres / grams).toBeCloseTo(bulk, 12);
  });

  it('takes a bulk of 1.25 when none is known', () => {
    // Common practice, no source.
    expect(caliperOf(240)).toBeCloseTo(0.3, 12);
  });
});
