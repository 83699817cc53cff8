/** What a spreadsheet program takes for the beginning of a formula, apostrophes of an earlier guard before it included. */
const formula = /^'*[=+\-@\t\r]/
/** A number as people type it: it may begin with a minus and is no formula. */
const plainNumber = /^[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)(?:[eE][+-]?\d+)?$/

/**
 * A text cell that no spreadsheet program runs: what could be a formula gets an apostrophe before it, a plain number such as −3.5 does
 * not. {@link unguarded} gives the text back.
 *
 * @example guarded('=HYPERLINK("http://…")') // '\'=HYPERLINK("http://…")'
 * @example guarded('-3.5') // '-3.5'
 */
export const guarded = (text: string): string => (formula.test(text) && !plainNumber.test(text) ? `'${text}` : text)

/** The text that was guarded; every other text as it is. */
export const unguarded = (text: string): string =>
  text.startsWith("'") && formula.test(text) && !plainNumber.test(text) ? text.slice(1) : text
