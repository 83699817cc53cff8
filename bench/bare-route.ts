// The peer of the single PUT: a bare Fastify route that does one durable insert in SQLite and nothing else.
import { DatabaseSync } from 'node:sqlite'
import Fastify from 'fastify'

const database = new DatabaseSync(process.argv[2]!)
database.exec(
  'pragma journal_mode = wal; pragma synchronous = full; create table entry (id text primary key, body text not null)',
)
const insert = database.prepare('insert into entry (id, body) values (?, ?)')
const app = Fastify()
app.get('/livez', () => ({ status: 'ok' }))
app.put<{ Params: { id: string } }>('/api/v1/entries/:id', ({ params, body }, reply) => {
  insert.run(params.id, JSON.stringify(body))
  return reply.code(201).send({ id: params.id })
})
process.on('SIGTERM', () => app.close().then(() => process.exit(0)))
process.stdout.write(`${await app.listen({ host: '127.0.0.1', port: 0 })}\n`)
