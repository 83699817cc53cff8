/**
 * Enter goes on to the next field of the form that is typed into; in the last one it sends the form, as the browser does it anyway. On a phone's
 * keyboard the key stands under the thumb while the next field may be hidden behind the keys.
 */
export function enterToNext(event: KeyboardEvent): void {
  const from = event.target
  if (event.key !== 'Enter' || !(from instanceof HTMLInputElement)) return
  const fields = [...(from.form?.querySelectorAll<HTMLElement>('input:not([type="radio"])') ?? [])].filter(
    (field) => field.closest('details:not([open])') === null,
  )
  const next = fields[fields.indexOf(from) + 1]
  if (next === undefined) return
  event.preventDefault()
  next.focus()
}
