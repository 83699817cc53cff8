import { useQuery } from '@tanstack/preact-query'
import { endSession, endToken, readSessions, readTokens, type TokenLine } from '../api/people.ts'
import { queries } from '../api/queries.ts'
import { sayBrowser } from './say-browser.ts'
import { Said } from './texts-form.tsx'
import { useAsking } from './use-asking.ts'

const day = (instant: string) => new Date(instant).toLocaleDateString(undefined, { dateStyle: 'medium' })
const moment = (instant: string) =>
  new Date(instant).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' })

/** Where somebody is signed in; `person` null: oneself. */
export function Sessions({ person }: { person: string | null }) {
  const key = ['people', person, 'sessions']
  const sessions = useQuery({ queryKey: key, queryFn: () => readSessions(person) })
  const asking = useAsking()
  const end = async (id: string) => {
    if (await asking.ask(() => endSession(person, id))) await queries.invalidateQueries({ queryKey: key })
  }
  return (
    <>
      <Said asking={asking} />
      {sessions.data?.length === 0 && <p class="quiet">Signed in nowhere.</p>}
      {sessions.data?.map(({ id, since, lastSeen, address, browser, isThis }) => (
        <div key={id} class="person-line">
          <span>
            {sayBrowser(browser)}
            {isThis === true && <span class="tag plain"> here</span>}
            <span class="quiet">
              since {moment(since)}, seen {day(lastSeen)}
              {address === null ? '' : `, from ${address}`}
            </span>
          </span>
          {isThis !== true && (
            <button type="button" class="plain" disabled={asking.isBusy} onClick={() => void end(id)}>
              End
            </button>
          )}
        </div>
      ))}
    </>
  )
}

/** Tokens and phones of somebody; `person` null: one's own. */
export function Tokens({ person }: { person: string | null }) {
  const key = ['people', person, 'tokens']
  const tokens = useQuery({ queryKey: key, queryFn: () => readTokens(person) })
  const asking = useAsking()
  const end = async (id: string) => {
    if (await asking.ask(() => endToken(person, id))) await queries.invalidateQueries({ queryKey: key })
  }
  return (
    <>
      <Said asking={asking} />
      {tokens.data?.length === 0 && <p class="quiet">None.</p>}
      {tokens.data?.map((token) => (
        <TokenRow key={token.id} token={token} isBusy={asking.isBusy} end={() => void end(token.id)} />
      ))}
    </>
  )
}

export function TokenRow({ token, isBusy, end }: { token: TokenLine; isBusy: boolean; end(): void }) {
  const { kind, name, scopes, madeAt, usedAt, expiresAt } = token
  const what = { personal: `token to ${scopes.join(', ')}`, device: 'phone', shared: 'shared device' }[kind]
  return (
    <div class="person-line">
      <span>
        {name}
        <span class="quiet">
          {what}, since {day(madeAt)}, {usedAt === null ? 'never used' : `used ${day(usedAt)}`}
          {expiresAt === null ? '' : `, ends ${day(expiresAt)}`}
        </span>
      </span>
      <button type="button" class="plain" aria-label={`End ${name}`} disabled={isBusy} onClick={end}>
        End
      </button>
    </div>
  )
}
