import { BookError } from '@sumpbook/book'
import { say } from '@sumpbook/fluid'
import { type Account, isRole, openPeople, type People, roles } from '@sumpbook/server'
import { type Command, exits, UsageError, type World } from '../command.ts'
import { withBook } from '../open.ts'
import { parse } from '../options.ts'
import { readSettings } from '../settings.ts'

/** People, for whoever sits at the machine: above all an owner who is locked out. */
export const peopleCommand: Command = {
  summary: 'Lists the people of the book, invites, changes and lets back in',
  usage: `sumpbook people                        who there is
sumpbook people add NAME --role ROLE   invites somebody; prints a code, good once and for seven days
sumpbook people code WHO               a new code for somebody who lost theirs, the password or the second factor
sumpbook people role WHO ROLE          another role: ${roles.join(', ')}
sumpbook people close WHO              closes an account; what the person wrote stays
sumpbook people open WHO               opens it again

  WHO      a name, what somebody signs in with, or an id
  --data FOLDER | --database-url URL     the book; it may be in use
  --json`,
  run: async (args, world) => {
    const { values, positionals } = parse(args, { role: { type: 'string' } })
    return withBook(readSettings(values, world), async (book) => {
      const people = await openPeople(book.store)
      const outcome = await asked(people, positionals, values.role)
      print(outcome, { json: values.json, world })
      return exits.done
    })
  },
}

interface Outcome {
  people: Account[]
  /** Shown once. */
  code?: { name: string; code: string; expires: string }
}

async function asked(people: People, words: readonly string[], role: string | undefined): Promise<Outcome> {
  const [verb = 'list', who, more, ...rest] = words
  if (rest.length > 0) throw new UsageError(`found "${rest[0]}" where nothing was expected`)
  if (verb === 'list') return { people: await people.list() }
  if (who === undefined) throw new UsageError(`people ${verb}: expected a name`)
  if (verb === 'add') {
    const { id, code, expires } = await people.add({ name: who, role: roleOf(role ?? more) })
    return { people: [await people.person(id)], code: { name: who, code, expires } }
  }
  const { id, name } = await named(people, who)
  if (verb === 'code') {
    const { code, expires } = await people.newCode(id)
    return { people: [await people.person(id)], code: { name, code, expires } }
  }
  if (verb === 'role') await people.change(id, { role: roleOf(more ?? role) })
  else if (verb === 'close') await people.change(id, { closed: true })
  else if (verb === 'open') await people.change(id, { closed: false })
  else throw new UsageError(`people: found "${verb}", expected list, add, code, role, close or open`)
  return { people: [await people.person(id)] }
}

function roleOf(text: string | undefined) {
  if (text !== undefined && isRole(text)) return text
  throw new UsageError(`role: found ${text === undefined ? 'nothing' : `"${text}"`}, expected ${roles.join(', ')}`)
}

async function named(people: People, who: string): Promise<Account> {
  const found = (await people.list()).filter(({ id, name, login }) => [id, name, login].includes(who))
  if (found.length === 1) return found[0]!
  if (found.length === 0)
    throw new BookError('not-found', `There is nobody here by "${who}": "sumpbook people" lists all.`)
  throw new BookError(
    'refused-input',
    `${found.length} people are called "${who}": name one by what they sign in with, or by id.`,
  )
}

function print({ people, code }: Outcome, { json, world }: { json: boolean; world: World }): void {
  if (json) {
    world.stdout.write(`${JSON.stringify({ people, code: code ?? null }, null, 2)}\n`)
    return
  }
  const lines = people.map(({ name, role, login, closedAt, secondFactor }) => {
    const said = [
      role,
      login ?? say('has not come yet'),
      secondFactor ? say('second factor') : '',
      closedAt === null ? '' : say('closed'),
    ]
    return `${name}: ${said.filter((part) => part !== '').join(', ')}`
  })
  if (people.length === 0) lines.push(say('There is nobody yet: accounts are for a book that is open to the network.'))
  if (code !== undefined) {
    lines.push(
      say('The code for {name}, good once, until {until} UTC: {code}', {
        name: code.name,
        until: code.expires.slice(0, 16).replace('T', ' '),
        code: code.code,
      }),
    )
  }
  world.stdout.write(`${lines.join('\n')}\n`)
}
