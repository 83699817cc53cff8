import type { Role, Scope } from './roles.ts'

/** Who may ask for something. */
export interface Access {
  /** The least role; `anybody`: without an account too, since it is how one gets in. */
  role: Role | 'anybody'
  /** What a token must be made for; null: no token, only somebody who signed in. */
  scope: Scope | null
}

const anybody: Access = { role: 'anybody', scope: null }
const reading: Access = { role: 'reader', scope: 'read' }
const writing: Access = { role: 'operator', scope: 'write' }
const keeping: Access = { role: 'keeper', scope: 'manage' }
/** What everybody does with their own account. */
const own: Access = { role: 'reader', scope: null }
const owning: Access = { role: 'owner', scope: null }

/** Every endpoint of the API and who may use it; `docs/people.md` has the same as a table. One that is missing here stops the server from starting. */
export const accessTable: Readonly<Record<string, Access>> = {
  'GET /book': reading,
  'GET /today': reading,
  'GET /sumps': reading,
  'GET /sumps/:id': reading,
  'GET /sumps/:id/outlook': reading,
  'GET /sumps/:id/plan': reading,
  'GET /sumps/:id/other-water': reading,
  'GET /sumps/:id/dose': reading,
  'GET /handover': reading,
  'GET /sumps/:id/diagnosis': reading,
  'GET /signs': reading,
  'GET /sumps/:id/calendar': reading,
  'GET /sumps/:id/analytes': reading,
  'GET /calendar': reading,
  'GET /samples': reading,
  'GET /guidance': reading,
  'GET /sumps/:id/cleanout-plan': reading,
  'GET /cleanouts/side-by-side': reading,
  'GET /jobs': reading,
  'GET /jobs/:id': reading,
  'GET /claims': reading,
  'GET /upkeep': reading,
  'GET /estimate': reading,
  'GET /cost': reading,
  'GET /cost/habits': reading,
  'GET /cost/life': reading,
  'GET /reports/month': reading,
  'GET /stock': reading,
  'GET /waste': reading,
  'GET /things/:kind/:id/measurements': reading,
  'GET /changes': reading,
  'GET /attachments/:sha256': reading,
  'GET /entries': reading,
  'GET /entries/:id': reading,
  'GET /entries/table': reading,
  'POST /calc/:name': reading,
  'GET /people': reading,
  'PUT /attachments/:sha256': writing,
  'PUT /entries': writing,
  'PUT /entries/:id': writing,
  'GET /quarantine': { role: 'keeper', scope: 'read' },
  'GET /backup': { role: 'keeper', scope: 'read' },
  'POST /backup/drill': keeping,
  'GET /backup/archive': { role: 'owner', scope: 'manage' },
  'POST /import': keeping,
  'GET /export': keeping,
  'POST /demo': keeping,
  'POST /people': owning,
  'PUT /people/:id': owning,
  'POST /people/:id/code': owning,
  'GET /people/:id/sessions': owning,
  'DELETE /people/:id/sessions/:session': owning,
  'GET /people/:id/tokens': owning,
  'DELETE /people/:id/tokens/:token': owning,
  'GET /devices': owning,
  'POST /devices': owning,
  'DELETE /devices/:id': owning,
  'GET /me/sessions': own,
  'DELETE /me/sessions/:id': own,
  'PUT /me/password': own,
  'PUT /me/pin': own,
  'POST /me/second-factor': own,
  'PUT /me/second-factor': own,
  'DELETE /me/second-factor': own,
  'GET /me/tokens': own,
  'POST /me/tokens': own,
  'DELETE /me/tokens/:id': own,
  'POST /me/devices': own,
  'GET /session': anybody,
  'POST /session': anybody,
  'DELETE /session': anybody,
  'POST /session/second-factor': anybody,
  'POST /session/first-run': anybody,
  'POST /session/join': anybody,
  'GET /session/provider': anybody,
  'GET /device/people': anybody,
  'PUT /device/person': anybody,
  'DELETE /device/person': anybody,
}

/**
 * Who may use an endpoint.
 *
 * @param path below `/api/v1`, as the route is declared
 * @throws {RangeError} one that the table does not have
 */
export function accessTo(method: string, path: string): Access {
  const access = accessTable[`${method} ${path.startsWith('/calc/') ? '/calc/:name' : path}`]
  if (access === undefined) throw new RangeError(`nobody has said who may use ${method} ${path}: add it to access.ts`)
  return access
}
