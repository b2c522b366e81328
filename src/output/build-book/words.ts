// How the build book says numbers. Figures stand in groups of three: ISO 80000-1, from memory.

const NO_BREAK = '\u00a0';

/** A number that is not negative. */
export function grouped(value: number, decimals = 0): string {
  const [whole, fraction] = value.toFixed(decimals).split('.');
  const groups = whole.replace(/\B(?=(\d{3})+$)/g, NO_BREAK);
  return fraction === undefined ? groups : `${groups}.${fraction}`;
}

/** A length to the tenth, without a needless zero. */
export const millimetres = (mm: number): string =>
  `${grouped(tenth(mm), tenth(mm) % 1 ? 1 : 0)} mm`;

export const size = (width: number, height: number): string =>
  `${millimetres(width).replace(' mm', '')} × ${millimetres(height)}`;

const tenth = (mm: number): number => Math.round(mm * 10) / 10;

/** Such as "45 s", "12 min 30 s" or "1 h 05 min". */
export function duration(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} s`;
  const minutes = Math.floor(whole / 60);
  const two = (n: number): string => String(n).padStart(2, '0');
  if (minutes < 60) return `${minutes} min ${two(whole % 60)} s`;
  const rounded = Math.round(whole / 60);
  return `${Math.floor(rounded / 60)} h ${two(rounded % 60)} min`;
}

export const count = (n: number, one: string, many = `${one}s`): string =>
  `${grouped(n)} ${n === 1 ? one : many}`;
