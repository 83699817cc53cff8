import { type SignId, say, sayFinding } from '@sumpbook/fluid'
import { useState } from 'preact/hooks'
import { familiesWith, type TickedFamily } from './ticked.ts'

/** The published list of signs to tick, one family open at a time. */
export function TickList({ ticked, toggle }: { ticked: ReadonlySet<SignId>; toggle(sign: SignId): void }) {
  const families = familiesWith(ticked)
  const [open, setOpen] = useState<string | null>(ticked.size === 0 ? 'look' : null)
  return (
    <section aria-labelledby="seen" class="part tick-list">
      <h2 id="seen">{say('What is seen, smelt, felt')}</h2>
      {families.map((family) => (
        <Family
          key={family.family}
          {...family}
          isOpen={open === family.family}
          onOpen={() => setOpen(open === family.family ? null : family.family)}
          toggle={toggle}
        />
      ))}
    </section>
  )
}

interface FamilyProps extends TickedFamily {
  isOpen: boolean
  onOpen(): void
  toggle(sign: SignId): void
}

function Family({ family, name, signs, ticked, isOpen, onOpen, toggle }: FamilyProps) {
  return (
    <div class="sign-family">
      <button type="button" class="row" aria-expanded={isOpen} aria-controls={`signs-${family}`} onClick={onOpen}>
        <span>{name}</span>
        <b>{ticked.map(sayFinding).join(', ')}</b>
      </button>
      <fieldset id={`signs-${family}`} hidden={!isOpen}>
        <legend class="only-read">{name}</legend>
        {signs.map(({ id, question, isTicked }) => (
          <label key={id} class={isTicked ? 'sign here' : 'sign'}>
            <input type="checkbox" checked={isTicked} onChange={() => toggle(id)} />
            <span>{question}</span>
          </label>
        ))}
      </fieldset>
    </div>
  )
}
