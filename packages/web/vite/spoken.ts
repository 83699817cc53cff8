import { parseSync } from 'vite'

/** As much of a syntax tree as is looked at. */
interface Syntax {
  type?: string
  name?: unknown
  value?: unknown
  start: number
  end: number
  callee?: Syntax
  arguments?: Syntax[]
  properties?: (Syntax & { key?: Syntax })[]
  quasis?: { value: { cooked: string } }[]
  consequent?: Syntax
  alternate?: Syntax
}

/** A sentence and where it stands in a piece of code, quotes included. */
export interface Place {
  text: string
  start: number
  end: number
}

/** Every text that stands whole in a piece of code. */
export function textsIn(code: string): string[] {
  const texts: string[] = []
  visit(parseSync('module.js', code).program, (node) => {
    const text = textOf(node)
    if (text !== null) texts.push(text)
  })
  return texts
}

/**
 * The sentences that are said where they stand, `say('…')` and `<Said text="…">`, and go nowhere else. A `message('…')` of a table is none
 * of them: what a table holds may be recorded or compared as well.
 *
 * @param code a module without types, its tags turned into calls
 */
export function saidIn(code: string): Place[] {
  const places: Place[] = []
  const take = (node: Syntax | undefined): void => {
    if (node === undefined) return
    const text = textOf(node)
    if (text !== null) places.push({ text, start: node.start, end: node.end })
    else if (node.type === 'ConditionalExpression') {
      take(node.consequent)
      take(node.alternate)
    }
  }
  visit(parseSync('module.js', code).program, ({ type, callee, arguments: given }) => {
    if (type !== 'CallExpression') return
    if (callee!.name === 'say') take(given![0])
    else if (given![0]?.name === 'Said')
      take(given![1]!.properties!.find(({ key }) => key?.name === 'text')?.value as Syntax | undefined)
  })
  return places
}

function visit(node: unknown, look: (node: Syntax) => void): void {
  if (node === null || typeof node !== 'object') return
  if (!Array.isArray(node)) look(node as Syntax)
  for (const part of Object.values(node)) visit(part, look)
}

function textOf({ type, value, quasis }: Syntax): string | null {
  if (type === 'Literal' && typeof value === 'string') return value
  return type === 'TemplateLiteral' && quasis!.length === 1 ? quasis![0]!.value.cooked : null
}
