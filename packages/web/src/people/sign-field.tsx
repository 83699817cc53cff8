import { useId } from 'preact/hooks'

/** A field that the browser may fill from what it keeps for its user. */
export function SignField({
  label,
  value,
  onInput,
  kind,
  hint,
  fault,
  numeric = false,
}: {
  label: string
  value: string
  onInput(text: string): void
  /** `pin`: hidden, and not for the browser to keep. */
  kind: 'pin' | 'username' | 'current-password' | 'new-password' | 'one-time-code' | 'name' | 'off'
  hint?: string
  fault?: string | null
  numeric?: boolean
}) {
  const id = useId()
  const isSecret = kind === 'pin' || kind.endsWith('password')
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        type={isSecret ? 'password' : 'text'}
        value={value}
        autocomplete={kind === 'pin' ? 'off' : kind}
        autocapitalize={kind === 'name' ? 'words' : 'none'}
        spellcheck={false}
        inputMode={numeric ? 'numeric' : 'text'}
        aria-invalid={fault == null ? undefined : 'true'}
        aria-describedby={`${id}-says`}
        onInput={(event) => onInput(event.currentTarget.value)}
      />
      <div id={`${id}-says`}>
        {fault != null && (
          <div class="fault" role="alert">
            {fault}
          </div>
        )}
        {hint !== undefined && <div class="hint">{hint}</div>}
      </div>
    </div>
  )
}
