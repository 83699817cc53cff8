/** Leads to the first field with a fault, also where it is folded away. */
export function showFirstFault(): void {
  const field = document.querySelector<HTMLElement>('[aria-invalid="true"]')
  field?.closest('details')?.setAttribute('open', '')
  field?.focus()
}
