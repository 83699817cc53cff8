import { say } from '@sumpbook/fluid'
import type { useSaving } from './use-saving.ts'

/** What was said against a form as a whole, and its two buttons. */
export function SaveRow({ saving, cancel }: { saving: ReturnType<typeof useSaving>; cancel(): void }) {
  return (
    <>
      {saving.rest.map((sentence) => (
        <p class="fault" role="alert">
          {sentence}
        </p>
      ))}
      <div class="buttons">
        <button type="submit" class="main" disabled={saving.isBusy}>
          {say('Write it down')}
        </button>
        <button type="button" class="plain" onClick={cancel}>
          {say('Back')}
        </button>
      </div>
    </>
  )
}
