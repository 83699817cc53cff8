import type { PeopleDoor } from '@sumpbook/book'
import { betterAuth } from 'better-auth'
import { genericOAuth } from 'better-auth/plugins/generic-oauth'
import { twoFactor } from 'better-auth/plugins/two-factor'
import { longestPassword, shortestPassword } from './password-rules.ts'
import { type Provider, providerId } from './provider.ts'

export interface LibraryOptions {
  door: PeopleDoor
  /** Signs cookies, encrypts what one-time codes are made from. */
  secret: string
  /** Where people reach the book, where that is settled: then cookies are for https only, and a provider may send them back. */
  publicUrl: string | null
  provider: Provider | null
}

const day = 24 * 60 * 60

/**
 * The authentication library on the book's own tables: passwords (scrypt), sessions, one-time codes, OpenID Connect. It sees no request of its
 * own: routes call it.
 */
export function openLibrary({ door: { db, kind }, secret, publicUrl, provider }: LibraryOptions) {
  return betterAuth({
    appName: 'Sumpbook',
    database: { db, type: kind },
    baseURL: publicUrl ?? 'http://localhost',
    basePath: '/api/session-library',
    secret,
    telemetry: { enabled: false },
    logger: { disabled: true },
    rateLimit: { enabled: false },
    emailAndPassword: {
      enabled: true,
      disableSignUp: true,
      minPasswordLength: shortestPassword,
      maxPasswordLength: longestPassword,
    },
    user: {
      modelName: 'person',
      additionalFields: {
        role: { type: 'string', required: true, input: false },
        closed_at: { type: 'string', required: false, input: false },
      },
    },
    session: { modelName: 'person_session', expiresIn: 30 * day, updateAge: day },
    account: {
      modelName: 'person_account',
      // Only who was invited under an address that the provider has verified gets in.
      accountLinking: { enabled: true },
    },
    verification: { modelName: 'person_verification' },
    advanced: {
      cookiePrefix: 'sumpbook',
      useSecureCookies: publicUrl?.startsWith('https:') ?? false,
      defaultCookieAttributes: { sameSite: 'lax', httpOnly: true },
      database: { generateId: () => crypto.randomUUID() },
    },
    plugins: [
      twoFactor({ issuer: 'Sumpbook', schema: { twoFactor: { modelName: 'person_two_factor' } } }),
      genericOAuth({
        config:
          provider === null
            ? []
            : [
                {
                  providerId,
                  name: provider.name,
                  discoveryUrl: `${provider.issuer.replace(/\/$/, '')}/.well-known/openid-configuration`,
                  clientId: provider.clientId,
                  clientSecret: provider.clientSecret,
                  scopes: ['openid', 'profile', 'email'],
                  pkce: true,
                  requireIdTokenVerification: true,
                  disableSignUp: true,
                },
              ],
      }),
    ],
  })
}

export type Library = ReturnType<typeof openLibrary>
