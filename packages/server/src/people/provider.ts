/** A provider of OpenID Connect, as the settings name it. */
export interface Provider {
  issuer: string
  clientId: string
  clientSecret: string
  /** On the button. */
  name: string
}

/** The one provider has one name in addresses. */
export const providerId = 'openid'
