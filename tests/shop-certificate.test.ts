/** A certificate of the shop's own, made with the system's openssl and judged by Node's. */
import { spawn, spawnSync } from 'node:child_process'
import { X509Certificate } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { request } from 'node:https'
import { type AddressInfo, createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, onTestFinished, test } from 'vitest'

const script = fileURLToPath(new URL('../scripts/shop-certificate.mjs', import.meta.url))
const bin = fileURLToPath(new URL('../packages/cli/bin/sumpbook.js', import.meta.url))

function folder(): string {
  const path = mkdtempSync(join(tmpdir(), 'sumpbook-certificate-'))
  onTestFinished(() => rmSync(path, { recursive: true, force: true }))
  return path
}

const make = (cwd: string, ...args: string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, ...args], { cwd, encoding: 'utf8' })
  return { code: status, out: stdout, err: stderr }
}

const readCertificate = (...path: string[]) => new X509Certificate(readFileSync(join(...path)))

test('a certificate for the names people type is vouched for by the shop’s authority, and no longer than phones take', {
  timeout: 60_000,
}, async () => {
  const cwd = folder()
  const { code, out } = make(cwd, 'book.shop.lan', '192.168.10.20')
  expect(code).toBe(0)
  expect(out).toContain('--public-url https://book.shop.lan:7340')
  const [authority, made] = [readCertificate(cwd, 'https', 'shop-ca.pem'), readCertificate(cwd, 'https', 'book.pem')]
  expect(made.checkHost('book.shop.lan')).toBe('book.shop.lan')
  expect(made.checkIP('192.168.10.20')).toBe('192.168.10.20')
  expect(made.checkHost('elsewhere.lan')).toBeUndefined()
  expect([made.checkIssued(authority), made.verify(authority.publicKey)]).toEqual([true, true])
  expect([authority.ca, made.ca]).toEqual([true, false])
  // 825 days is the most that phones take.
  expect((Date.parse(made.validTo) - Date.parse(made.validFrom)) / 86_400_000).toBeLessThanOrEqual(825)
  expect(statSync(join(cwd, 'https', 'book.key')).mode & 0o077).toBe(0)
  expect(statSync(join(cwd, 'https', 'shop-ca.key')).mode & 0o077).toBe(0)

  // Made anew: another certificate, the same authority, so that the phones stay as they are.
  expect(make(cwd, 'book.shop.lan').code).toBe(0)
  expect(readCertificate(cwd, 'https', 'shop-ca.pem').fingerprint256).toBe(authority.fingerprint256)
  expect(readCertificate(cwd, 'https', 'book.pem').fingerprint256).not.toBe(made.fingerprint256)

  rmSync(join(cwd, 'https', 'shop-ca.key'))
  const lost = make(cwd, 'book.shop.lan')
  expect([lost.code, lost.out]).toEqual([1, ''])
  expect(lost.err).toContain('shop-ca.key is not in')
})

test.each([['https://book.shop.lan'], ['book.shop.lan:7340'], ['two words'], ['-subj'], ['a..b']])(
  'what is no name is no certificate: %s',
  (name) => {
    const { code, out, err } = make(folder(), '--', name)
    expect([code, out]).toEqual([1, ''])
    expect(err).toContain(`Found "${name}"`)
  },
)

test('served with it, the book answers by https to who trusts the authority', { timeout: 60_000 }, async () => {
  const cwd = folder()
  make(cwd, 'localhost', '--into', '.')
  const port = await freePort()
  const child = spawn(
    process.execPath,
    [
      ...[bin, 'serve', '--port', String(port), '--data', 'book', '--public-url', `https://localhost:${port}`],
      ...['--certificate', 'book.pem', '--certificate-key', 'book.key'],
    ],
    { cwd, stdio: ['ignore', 'pipe', 'inherit'] },
  )
  onTestFinished(() => void child.kill('SIGKILL'))
  await new Promise<void>((resolve, reject) => {
    child.stdout!.on('data', (chunk: Buffer) => {
      if (chunk.toString().includes(`https://localhost:${port}`)) resolve()
    })
    child.once('exit', () => reject(new Error('the server ended')))
  })
  const ca = readFileSync(join(cwd, 'shop-ca.pem'))
  const { status, headers } = await ask({ port, ca, path: '/livez' })
  expect(status).toBe(200)
  expect(headers['strict-transport-security']).toContain('max-age=')
  // Accounts are asked for, as anywhere but on loopback alone.
  expect((await ask({ port, ca, path: '/api/v1/book' })).status).toBe(401)
  await expect(ask({ port, path: '/livez' })).rejects.toThrow(/certificate/)
})

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1')
  await new Promise((resolve) => server.once('listening', resolve))
  const { port } = server.address() as AddressInfo
  await new Promise((resolve) => server.close(resolve))
  return port
}

const ask = (to: { port: number; path: string; ca?: Buffer }) =>
  new Promise<{ status: number; headers: NodeJS.Dict<string | string[]> }>((resolve, reject) => {
    request({ host: 'localhost', ...to }, (answer) => {
      answer.resume()
      resolve({ status: answer.statusCode!, headers: answer.headers })
    })
      .on('error', reject)
      .end()
  })
