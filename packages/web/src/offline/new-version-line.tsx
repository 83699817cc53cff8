import { say } from '@sumpbook/fluid'
import { letIn, newVersion } from './new-version.ts'
import { useObserved } from './observed.ts'

/** That a newer version is there, with the way to it; a stop of the round does not show it. */
export function NewVersionLine() {
  const state = useObserved(newVersion)
  if (state === 'none') return null
  return (
    <p class="new-version" role="status">
      {state === 'ready'
        ? say('A new version of the app is ready.')
        : say('A new version is ready. Another open page of this device has something typed: write that down first.')}
      <button type="button" class="plain" onClick={() => void letIn()}>
        {say('Load it')}
      </button>
    </p>
  )
}
