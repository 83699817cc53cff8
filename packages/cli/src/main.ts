import { type Command, exits, UsageError, type World } from './command.ts'

/** The verbs; each is loaded only when it is called, so that help answers at once. */
const commands: Record<string, { summary: string; load(): Promise<Command> }> = {
  serve: {
    summary: 'serve the book to phones and desks',
    load: async () => (await import('./commands/serve.ts')).serve,
  },
  demo: {
    summary: 'put the example shop into an empty book',
    load: async () => (await import('./commands/demo.ts')).demo,
  },
  import: {
    summary: 'take in a book file, a CSV or a workbook',
    load: async () => (await import('./commands/import.ts')).importCommand,
  },
  export: {
    summary: 'write the whole book to a file',
    load: async () => (await import('./commands/export.ts')).exportCommand,
  },
  report: {
    summary: 'what a month cost and what was done in it',
    load: async () => (await import('./commands/report.ts')).report,
  },
  today: {
    summary: 'what to pour into which sump today',
    load: async () => (await import('./commands/today.ts')).today,
  },
  estimate: {
    summary: 'where every sump stands, how sure that is, and where it goes',
    load: async () => (await import('./commands/estimate.ts')).estimate,
  },
  people: {
    summary: 'who may do what: invite, change, let back in',
    load: async () => (await import('./commands/people.ts')).peopleCommand,
  },
  verify: {
    summary: 'whether the book is as it was written',
    load: async () => (await import('./commands/verify.ts')).verify,
  },
  backup: {
    summary: 'write the book and its attachments to one checked file',
    load: async () => (await import('./commands/backup.ts')).backup,
  },
  restore: {
    summary: 'bring a backup back, or try whether it could be',
    load: async () => (await import('./commands/restore.ts')).restoreCommand,
  },
  'move-store': {
    summary: 'copy the book into a database, or back into a folder',
    load: async () => (await import('./commands/move-store.ts')).moveStoreCommand,
  },
  calc: { summary: 'one computation by name', load: async () => (await import('./commands/calc.ts')).calc },
}

/**
 * Runs one command line.
 *
 * @returns the exit code: 0 done, 1 failed, 2 usage, 3 input refused, 6 store out of reach
 */
export async function main(args: readonly string[], world: World): Promise<number> {
  const [name, ...rest] = args
  if (name === undefined || name === 'help' || name === '--help' || name === '-h') return help(rest[0], world)
  if (name === '--version' || name === '-v') {
    world.stdout.write(`${(await import('./version.ts')).version}\n`)
    return exits.done
  }
  const command = Object.hasOwn(commands, name) ? commands[name] : undefined
  if (command === undefined) {
    world.stderr.write(`There is no command "${name}". The commands are ${Object.keys(commands).join(', ')}.\n`)
    return exits.usage
  }
  if (rest.includes('--help') || rest.includes('-h')) return help(name, world)
  try {
    await (await import('./speak.ts')).speakAsAsked(rest, world)
    return await (await command.load()).run(rest, world)
  } catch (error) {
    return (await import('./report-error.ts')).reportError(error, { json: rest.includes('--json'), world })
  }
}

async function help(name: string | undefined, { stdout, stderr }: World): Promise<number> {
  if (name !== undefined && !Object.hasOwn(commands, name)) {
    stderr.write(`There is no command "${name}".\n`)
    return exits.usage
  }
  if (name !== undefined) {
    const { summary, usage } = await commands[name]!.load()
    stdout.write(`${summary}\n\n${usage}\n`)
    return exits.done
  }
  const lines = Object.entries(commands).map(([verb, { summary }]) => `  ${verb.padEnd(10)} ${summary}`)
  stdout.write(`Sumpbook, the logbook of water-mixed coolant

  sumpbook COMMAND [options]

${lines.join('\n')}

Every command takes --help, --json, --units us|metric|imperial, --language en|de|es, --numbers TAG (figures as in de-CH) and --data FOLDER.
Instead of a folder, --database-url names a PostgreSQL database with the book in it (--schema: where in it).
Settings also come from SUMPBOOK_DATA, SUMPBOOK_DATABASE_URL, SUMPBOOK_SCHEMA, SUMPBOOK_PORT, SUMPBOOK_HOST,
SUMPBOOK_LANGUAGE and SUMPBOOK_NUMBERS, each also from the file that SUMPBOOK_…_FILE names, and from sumpbook.json in this folder.
`)
  return exits.done
}

export { UsageError }
