import { datesLocale, message, say } from '@sumpbook/fluid'
import { useQuery } from '@tanstack/preact-query'
import { endSession, endToken, readSessions, readTokens, type TokenLine } from '../api/people.ts'
import { queries } from '../api/queries.ts'
import { sayBrowser } from './say-browser.ts'
import { SaidAgainst } from './texts-form.tsx'
import { useAsking } from './use-asking.ts'

const day = (instant: string) => new Date(instant).toLocaleDateString(datesLocale(), { dateStyle: 'medium' })
const moment = (instant: string) =>
  new Date(instant).toLocaleString(datesLocale(), { dateStyle: 'medium', timeStyle: 'short' })

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
      <SaidAgainst asking={asking} />
      {sessions.data?.length === 0 && <p class="quiet">{say('Signed in nowhere.')}</p>}
      {sessions.data?.map(({ id, since, lastSeen, address, browser, isThis }) => (
        <div key={id} class="person-line">
          <span>
            {sayBrowser(browser)}
            {isThis === true && <span class="tag plain"> {say('here')}</span>}
            <span class="quiet">
              {address === null
                ? say('since {since}, seen {seen}', { since: moment(since), seen: day(lastSeen) })
                : say('since {since}, seen {seen}, from {address}', {
                    since: moment(since),
                    seen: day(lastSeen),
                    address,
                  })}
            </span>
          </span>
          {isThis !== true && (
            <button type="button" class="plain" disabled={asking.isBusy} onClick={() => void end(id)}>
              {say('End')}
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
      <SaidAgainst asking={asking} />
      {tokens.data?.length === 0 && <p class="quiet">{say('None.')}</p>}
      {tokens.data?.map((token) => (
        <TokenRow key={token.id} token={token} isBusy={asking.isBusy} end={() => void end(token.id)} />
      ))}
    </>
  )
}

const scopeVerbs: Readonly<Record<string, string>> = {
  read: message('read'),
  write: message('write'),
  manage: message('manage'),
}

export function TokenRow({ token, isBusy, end }: { token: TokenLine; isBusy: boolean; end(): void }) {
  const { kind, name, scopes, madeAt, usedAt, expiresAt } = token
  const may = scopes.map((scope) => say(scopeVerbs[scope] ?? scope)).join(', ')
  const what = {
    personal: say('token to {scopes}', { scopes: may }),
    device: say('phone'),
    shared: say('shared device'),
  }[kind]
  return (
    <div class="person-line">
      <span>
        {name}
        <span class="quiet">
          {say(
            '{what}, since {since}, {used, select, never {never used} other {used {used}}}{ends, select, never {} other {, ends {ends}}}',
            {
              what,
              since: day(madeAt),
              used: usedAt === null ? 'never' : day(usedAt),
              ends: expiresAt === null ? 'never' : day(expiresAt),
            },
          )}
        </span>
      </span>
      <button type="button" class="plain" aria-label={say('End {name}', { name })} disabled={isBusy} onClick={end}>
        {say('End')}
      </button>
    </div>
  )
}
