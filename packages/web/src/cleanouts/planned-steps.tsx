import { say, sayHours } from '@sumpbook/fluid'
import { Cautions } from '../parts/cautions.tsx'

interface Planned {
  id: string
  title: string
  text: string
  cautions: readonly string[]
  signs: 'operator' | 'keeper'
  hours: number
}

/** The steps of a sheet before it is opened. */
export function PlannedSteps({ steps }: { steps: readonly Planned[] }) {
  return (
    <ol class="sheet-steps planned">
      {steps.map((step, i) => (
        <li key={step.id} class="sheet-step ahead">
          <div class="step-mark" aria-hidden="true">
            {i + 1}
          </div>
          <div class="step-words">
            <h3>{step.title}</h3>
            <p>{step.text}</p>
            <Cautions cautions={step.cautions} />
            <p class="quiet">
              {step.hours > 0 && `${say('About {hours}.', { hours: sayHours(step.hours) })} `}
              {step.signs === 'keeper' && say('A keeper signs.')}
            </p>
          </div>
        </li>
      ))}
    </ol>
  )
}
