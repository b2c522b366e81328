import type { Book, PanelPlan, WindowPlan } from '../../book/book.js';

/** The panel's window, or, on the backdrop, what is seen of it through the deepest window. */
export const openingOf = (book: Book, plan: PanelPlan): WindowPlan =>
  plan.window ?? (book.panels[book.panels.length - 2].window as WindowPlan);
