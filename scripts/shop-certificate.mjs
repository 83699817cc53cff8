/**
 * Makes what https in the shop's network needs, with the system's openssl: an authority of the shop's own, and a certificate by it for the names
 * that people type. See docs/operations.md, "https in the shop's network".
 *
 *     node scripts/shop-certificate.mjs [--into FOLDER] book.shop.lan 192.168.10.20
 */
import { spawnSync } from 'node:child_process'
import { X509Certificate } from 'node:crypto'
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { isIP } from 'node:net'
import { join, resolve } from 'node:path'
import { parseArgs } from 'node:util'

/** Phones refuse certificates that are good for more than 825 days (common practice of their makers since 2019). */
const days = 820
const authorityDays = 3650
/** P-256, which every phone takes and which is made in a moment. */
const elliptic = ['ec', '-pkeyopt', 'ec_paramgen_curve:P-256']

class Refused extends Error {}

try {
  makeAll()
} catch (error) {
  if (!(error instanceof Refused)) throw error
  console.error(error.message)
  process.exitCode = 1
}

function makeAll() {
  const { values, positionals: names } = parseArgs({
    options: { into: { type: 'string', default: 'https' } },
    allowPositionals: true,
  })
  if (names.length === 0) {
    throw new Refused(
      'Found no name; expected those that people type for the book, such as book.shop.lan 192.168.10.20',
    )
  }
  const alternatives = names.map(nameOf)
  const folder = resolve(values.into)
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  makeAuthority(folder)
  makeCertificate(folder, names[0], alternatives)
  const { validTo } = new X509Certificate(readFileSync(join(folder, 'book.pem')))
  const address = `https://${isIP(names[0]) === 6 ? `[${names[0]}]` : names[0]}:7340`
  console.log(`Made for ${names.join(', ')}, good until ${new Date(validTo).toISOString().slice(0, 10)}: note the day in the shop's calendar.

1. Serve the book with it:
   sumpbook serve --host 0.0.0.0 --certificate ${join(folder, 'book.pem')} --certificate-key ${join(folder, 'book.key')} --public-url ${address}
2. Bring ${join(folder, 'shop-ca.pem')} onto each phone and desk and trust it there: install the profile, then switch its trust on.
3. Take shop-ca.key off this machine and keep it well: who has it can pass for any site to those phones.`)
}

/** A name as a certificate has it. */
function nameOf(text) {
  if (isIP(text) !== 0) return `IP:${text}`
  const label = '[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?'
  if (text.length <= 253 && new RegExp(`^${label}(\\.${label})*$`, 'i').test(text)) return `DNS:${text}`
  throw new Refused(`Found "${text}"; expected a name or an address without scheme and port, such as book.shop.lan`)
}

/** One that lies there already is used again, so that the phones stay as they are. */
function makeAuthority(folder) {
  const [hasIt, hasKey] = ['shop-ca.pem', 'shop-ca.key'].map((name) => existsSync(join(folder, name)))
  if (hasIt !== hasKey) {
    const missing = hasIt ? 'shop-ca.key' : 'shop-ca.pem'
    throw new Refused(`${missing} is not in ${folder}, its other half is: bring it back there, or name another folder.`)
  }
  if (hasIt) return
  openssl(folder, [
    ...['req', '-x509', '-newkey', ...elliptic, '-nodes', '-days', String(authorityDays)],
    ...['-keyout', 'shop-ca.key', '-out', 'shop-ca.pem'],
    ...['-subj', '/CN=Shop authority', '-addext', 'keyUsage=critical,keyCertSign'],
  ])
  chmodSync(join(folder, 'shop-ca.key'), 0o600)
}

function makeCertificate(folder, name, alternatives) {
  const [request, extensions] = ['book.csr', 'book.ext']
  const lines = [
    `subjectAltName=${alternatives.join(',')}`,
    'keyUsage=critical,digitalSignature',
    'extendedKeyUsage=serverAuth',
    'basicConstraints=CA:FALSE',
    'authorityKeyIdentifier=keyid',
  ]
  writeFileSync(join(folder, extensions), `${lines.join('\n')}\n`)
  // A common name has room for 64 signs (RFC 5280, ub-common-name); what counts is the list of names.
  const subject = `/CN=${name.slice(0, 64)}`
  openssl(folder, ['req', '-newkey', ...elliptic, '-nodes', '-keyout', 'book.key', '-out', request, '-subj', subject])
  chmodSync(join(folder, 'book.key'), 0o600)
  openssl(folder, [
    ...['x509', '-req', '-in', request, '-CA', 'shop-ca.pem', '-CAkey', 'shop-ca.key', '-CAcreateserial'],
    ...['-days', String(days), '-extfile', extensions, '-out', 'book.pem'],
  ])
  for (const file of [request, extensions]) rmSync(join(folder, file))
}

function openssl(folder, args) {
  const { error, status, stderr } = spawnSync('openssl', args, { cwd: folder, encoding: 'utf8' })
  if (error !== undefined)
    throw new Refused(`openssl did not start (${error.message}). It is needed for this: install it.`)
  if (status !== 0) throw new Refused(`openssl made no certificate: ${stderr.trim()}`)
}
