import { describe, expect, it } from 'vitest';
import { SceneError } from '../../src/scene/problem.js';
import { readScene } from '../../src/scene/read.js';
import { elements } from './elements.js';

const STOCKS = 'stocks: { greyboard: { colour: "#8d8f8a", grammage: 600, caliper: 1 } }\n';

const read = (text: string) => readScene(text, { file: 'lock.yaml', elements }).scene;

function problemsIn(text: string): string[] {
  try {
    read(text);
  } catch (error) {
    if (!(error instanceof SceneError)) throw error;
    return error.problems.map(({ line, column, message }) => `${line}:${column} ${message}`);
  }
  return [];
}

describe('stencils in a scene', () => {
  it('are none when it says nothing of them', () => {
    expect(read('title: Lock at dusk\n').stencils).toBeNull();
  });

  it('are cut from a stock, with openings 1.5 calipers larger if it does not say otherwise', () => {
    expect(read(`${STOCKS}stencils: { card: greyboard }\n`).stencils).toMatchObject({
      card: { name: 'greyboard', caliperMm: 1 },
      clearance: 1.5,
    });
    const wide = read(`${STOCKS}stencils: { card: greyboard, clearance: 2 }\n`).stencils;
    expect(wide?.clearance).toBe(2);
  });

  it.each([
    ['no board', 'stencils: {}\n', /^2:11 stencils.card: missing; give the name of a stock/],
    [
      'a stock that is not there',
      'stencils: { card: greybord }\n',
      /^2:19 stencils.card: .*greyboard/,
    ],
    ['a colour', 'stencils: { card: ivory }\n', /^2:19 stencils.card: .*greyboard/],
    [
      'too tight a fit',
      'stencils: { card: greyboard, clearance: 0.5 }\n',
      /too small.*1 to 4 calipers/,
    ],
    [
      'a length for calipers',
      'stencils: { card: greyboard, clearance: 2 mm }\n',
      /a number from 1 to 4/,
    ],
    [
      'a strange key',
      'stencils: { card: greyboard, layers: 2 }\n',
      /"layers" is no key of stencils/,
    ],
    ['only a name', 'stencils: greyboard\n', /keys with values, such as "card: ..."/],
  ])('with %s are an error', (_name, line, message) => {
    const found = problemsIn(`${STOCKS}${line}`);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(message);
  });

  it('need a stock of their own', () => {
    expect(problemsIn('stencils: { card: ivory }\n')[0]).toMatch(
      /"ivory" is no stock; there are none yet: add it under `stocks`/,
    );
  });
});
