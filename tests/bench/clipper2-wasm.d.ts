/** The package's own declarations are not where its manifest says; this is what the bench uses. */
declare module 'clipper2-wasm' {
  interface Freed {
    delete(): void;
  }
  export interface Path64 extends Freed {
    /** Three 64-bit integers a point: x, y, z. */
    view(): BigInt64Array;
    assign(coordinates: BigInt64Array): void;
  }
  export interface Paths64 extends Freed {
    push_back(path: Path64): void;
    size(): number;
    /** A copy, to be deleted. */
    get(index: number): Path64;
  }
  /** A member of an enumeration. */
  interface Value {
    readonly value: number;
  }
  export interface Clipper2 {
    readonly FillRule: { readonly NonZero: Value };
    readonly JoinType: { readonly Round: Value };
    readonly EndType: { readonly Polygon: Value };
    Path64: new () => Path64;
    Paths64: new () => Paths64;
    UnionSelf64(subjects: Paths64, rule: Value): Paths64;
    InflatePaths64(
      paths: Paths64,
      delta: number,
      join: Value,
      end: Value,
      mitreLimit: number,
      arcTolerance: number,
    ): Paths64;
  }
  export default function load(): Promise<Clipper2>;
}
