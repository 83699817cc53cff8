import type { ComponentChildren } from 'preact'

/** A table that may be wider than the phone: it is scrolled by finger, and by keys once it has the focus. */
export function WideTable({ of, children }: { of: string; children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard (WCAG 2.1.1)
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for forms
    <div class="wide-table" role="group" aria-label={of} tabIndex={0}>
      {children}
    </div>
  )
}
