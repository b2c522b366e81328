export const degrees = (radian: number): number => (radian * 180) / Math.PI;
export const radians = (degree: number): number => (degree * Math.PI) / 180;

/** The turn from one heading to another, -180 to 180 degrees. */
export const turnBetween = (fromDeg: number, toDeg: number): number =>
  ((((toDeg - fromDeg) % 360) + 540) % 360) - 180;
