import type { z } from 'zod';
import { carried, choice, flag, LENGTHS, length, number, text, whole } from './fields.js';
import type { LengthParameter, NumberParameter, Parameter } from './parameter.js';
import type { SceneElement, Unit } from './scene.js';

const LONGEST_PATH = 400;

/** The value of a parameter as the scene holds it. */
export type Value = SceneElement['values'][string];

/** What a scene file may say for a parameter of an element; lengths in the file's unit. */
export function parameterField(parameter: Parameter, unit: Unit): z.ZodType<Value> {
  const { says } = parameter;
  switch (parameter.kind) {
    case 'length':
      return lengthField(parameter, unit);
    case 'number':
      return numberField(parameter);
    case 'choice':
      return choice(parameter.options).default(parameter.default).meta({ description: says });
    case 'flag':
      return flag().default(parameter.default).meta({ description: says });
    case 'text':
      return text(parameter.maxCharacters).default(parameter.default).meta({ description: says });
    case 'file':
      return text(LONGEST_PATH).default(parameter.default).meta({ description: says });
  }
}

function lengthField(parameter: LengthParameter, unit: Unit): z.ZodType<Value> {
  const { says, min, max } = parameter;
  return carried(LENGTHS, length(unit, parameter))
    .prefault(`${parameter.default} mm`)
    .meta({ description: `${says} ${min} to ${max} mm, or { from, to }.` });
}

function numberField(parameter: NumberParameter): z.ZodType<Value> {
  const { says, min, max } = parameter;
  const field = parameter.whole ? whole(parameter) : number(parameter);
  return carried(`a number from ${min} to ${max}`, field)
    .prefault(parameter.default)
    .meta({ description: `${says} ${min} to ${max}, or { from, to }.` });
}
