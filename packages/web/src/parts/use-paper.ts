import { useLayoutEffect } from 'preact/hooks'
import { type PrintedPage, pageRule } from './page-rule.ts'

/** The paper to print on while a page is shown; a style sheet of its own, since a page's address cannot say it. */
export function usePaper(page: PrintedPage): void {
  const rule = pageRule(page)
  useLayoutEffect(() => {
    const style = new CSSStyleSheet()
    style.replaceSync(rule)
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, style]
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((one) => one !== style)
    }
  }, [rule])
}
