import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { queries } from '../api/queries.ts'
import { useAsking } from './use-asking.ts'

/** A few texts that are asked for, sent, and forgotten. */
export function useTexts<Name extends string>(empty: Readonly<Record<Name, string>>) {
  const [texts, setTexts] = useState(empty)
  const [isDone, setDone] = useState(false)
  const asking = useAsking()
  return {
    texts,
    asking,
    isDone,
    /** What a field of that name shows and does. */
    field: (name: Name) => ({
      value: texts[name],
      onInput: (text: string) => setTexts({ ...texts, [name]: text }),
      fault: asking.fault(name),
    }),
    /** Sends what was typed; once it was taken the texts are gone. */
    send: async (sending: () => Promise<unknown>) => {
      setDone(false)
      if (!(await asking.ask(sending))) return
      setTexts(empty)
      setDone(true)
      await queries.invalidateQueries({ queryKey: ['people'] })
    },
  }
}

/** What of texts a form needs, whatever their names. */
export type Texts = Pick<ReturnType<typeof useTexts>, 'asking' | 'isDone' | 'send'>

/** A form around such texts, with one button that sends them. */
export function TextsForm({
  label,
  texts,
  send,
  button,
  isMain = false,
  canSend = true,
  more,
  done,
  door = false,
  children,
}: {
  /** What the form is called. */
  label: string
  texts: Texts
  send(): Promise<unknown>
  /** What the button says. */
  button: string
  isMain?: boolean
  canSend?: boolean
  /** Further buttons. */
  more?: ComponentChildren
  /** What is said when it was taken. */
  done?: string
  /** Whether it stands alone, before the book. */
  door?: boolean
  children: ComponentChildren
}) {
  const submit = (event: Event) => {
    event.preventDefault()
    void texts.send(send)
  }
  return (
    <form class={door ? 'door' : undefined} aria-label={label} onSubmit={submit}>
      {children}
      <SaidAgainst asking={texts.asking} />
      {done !== undefined && texts.isDone && <p role="status">{done}</p>}
      <div class="buttons">
        <button type="submit" class={isMain ? 'main' : undefined} disabled={texts.asking.isBusy || !canSend}>
          {button}
        </button>
        {more}
      </div>
    </form>
  )
}

/** What was said against a form as a whole. */
export function SaidAgainst({ asking }: { asking: ReturnType<typeof useAsking> }) {
  return asking.rest === null ? null : (
    <p class="fault" role="alert">
      {asking.rest}
    </p>
  )
}
