import { formatOf, inLanguage, speech, type Values } from '@sumpbook/fluid'
import { type ComponentChildren, Fragment } from 'preact'

interface SaidProps {
  /** The English sentence: `Read <page>the label</page> first.` */
  text: string
  values?: Values
  /** What becomes of each `<name>…</name>` of the sentence. */
  parts: Readonly<Record<string, (inside: ComponentChildren) => ComponentChildren>>
}

/** A sentence with links or strong words in it, whole for whoever translates it. */
export function Said({ text, values = {}, parts }: SaidProps) {
  const { language, numbers } = speech()
  const format = formatOf(inLanguage(language, text), language, numbers, true)
  const filled = Object.fromEntries(
    Object.entries(parts).map(([name, part]) => [name, (inside: ComponentChildren[]) => part(inside)]),
  )
  const told = format.format<ComponentChildren>({ ...values, ...filled })
  return <>{Array.isArray(told) ? told.map((part, index) => <Fragment key={String(index)}>{part}</Fragment>) : told}</>
}
