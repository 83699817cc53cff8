import { say } from '@sumpbook/fluid'

/** Paper as it lies in the printer. */
export type Paper = 'A4' | 'letter'

/** A page to print on. */
export interface PrintedPage {
  paper: Paper
  landscape?: boolean
  /** Of each edge, millimetres. */
  margin: number
  /** At the foot of every page, with the page's number beside it; null leaves the foot to the browser. */
  foot?: string | null
}

/** The rule of CSS Paged Media (W3C css-page-3) for a page; browsers without its margin boxes leave the foot out. */
export function pageRule({ paper, landscape = false, margin, foot = null }: PrintedPage): string {
  const boxes =
    foot === null
      ? ''
      : ` @bottom-left { content: ${cssText(foot)}; font: 9pt system-ui, sans-serif } @bottom-right { content: ${pages()}; font: 9pt system-ui, sans-serif }`
  return `@page { size: ${paper}${landscape ? ' landscape' : ''}; margin: ${margin}mm;${boxes} }`
}

/** "2 of 3" as the printer counts. */
function pages(): string {
  const [before = '', between = '', after = ''] = say('{page} of {pages}', { page: '\n', pages: '\n' }).split('\n')
  return `${cssText(before)} counter(page) ${cssText(between)} counter(pages) ${cssText(after)}`
}

/** Text as a string of CSS: quotes, backslashes and ends of lines by their code (CSS Syntax 3, 4.3.7). */
const cssText = (text: string) =>
  `"${text.replace(/["\\\n\r\f]/g, (sign) => `\\${sign.codePointAt(0)!.toString(16)} `)}"`
