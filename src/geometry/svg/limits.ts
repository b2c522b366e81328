/**
 * How large a drawing may be. A motif for a book has some hundred elements; the limits lie far
 * above that and are there so that no file, by mistake or by malice, keeps a program busy for
 * minutes or fills its memory. Too low a limit turns down an honest drawing, with an error that
 * says so; too high a one lets a hostile file cost more time.
 */

/** Characters of the file: at this length the text alone takes some seconds to read. */
export const MAX_CHARACTERS = 4_000_000;
/** Elements within elements, `use` followed: the reader recurses, so the stack must hold them. */
export const MAX_DEPTH = 200;
/**
 * Elements of the file; and again those met while drawing it, where each `use` counts anew: ten uses
 * of ten uses of ten elements are a thousand.
 */
export const MAX_ELEMENTS = 20_000;
/** Curves and edges of all that is drawn: outlining so many strokes takes some twenty seconds. */
export const MAX_SEGMENTS = 50_000;
/** Dashes of all strokes: each is a line of its own to outline. */
export const MAX_DASHES = 5_000;
/**
 * Places where shapes cross themselves: each costs up to a millisecond and a half where the rule is
 * even-odd, and a few hundred random curves cross each other this often.
 */
export const MAX_CROSSINGS = 10_000;
/** Places where shapes cross each other, when all are united: these cost far less. */
export const MAX_CROSSINGS_BETWEEN = 50_000;
/** Curves and edges that clipping looks at, a clip path's own again for each shape it clips. */
export const MAX_CLIPPED = 500_000;
/** Declarations in style sheets: every element may have to be matched against all. */
export const MAX_DECLARATIONS = 5_000;
/** Farthest that anything may lie from the page's corner, in mm: ten metres, beyond any card. */
export const MAX_REACH_MM = 10_000;
