import { say, speech } from '@sumpbook/fluid'
import { decimalSign } from '../say/units.ts'

/** The sign is that of the reader's numbers; a field understands either. */
const keysOf = (sign: ',' | '.') => ['7', '8', '9', '4', '5', '6', '1', '2', '3', sign, '0'] as const

/** Big keys for a gloved thumb. They write into the field that has the focus and leave it there. */
export function Keys({ press, rub }: { press(key: string): void; rub(): void }) {
  const keepFocus = (event: Event) => event.preventDefault()
  return (
    <fieldset class="keys">
      <legend class="only-read">{say('Keys')}</legend>
      {keysOf(decimalSign(speech().numbers)).map((key) => (
        <button
          type="button"
          tabIndex={-1}
          onPointerDown={keepFocus}
          onMouseDown={keepFocus}
          onClick={() => press(key)}
        >
          {key}
        </button>
      ))}
      <button
        type="button"
        tabIndex={-1}
        aria-label={say('Rub out')}
        onPointerDown={keepFocus}
        onMouseDown={keepFocus}
        onClick={rub}
      >
        <svg width="30" height="22" viewBox="0 0 30 22" aria-hidden="true">
          <path
            d="M9 2h18v18H9L1.500 11z M13.500 7l8 8 M21.500 7l-8 8"
            fill="none"
            stroke="currentColor"
            stroke-width="2.2"
            stroke-linejoin="round"
            stroke-linecap="round"
          />
        </svg>
      </button>
    </fieldset>
  )
}
