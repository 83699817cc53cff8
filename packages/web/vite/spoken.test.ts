import { expect, test } from 'vitest'
import { saidIn, textsIn } from './spoken.ts'

const said = (code: string) => saidIn(code).map(({ text, start, end }) => [text, code.slice(start, end)])

test('what is said where it stands is found with its place, both sides of a choice too', () => {
  expect(said(`const a = say('Add {volume}', { volume }); say(isDry ? "Dry" : \`Wet\`)`)).toEqual([
    ['Add {volume}', "'Add {volume}'"],
    ['Dry', '"Dry"'],
    ['Wet', '`Wet`'],
  ])
})

test('a sentence with elements in it is found in the call that its tag became', () => {
  expect(
    said(`jsx(Said, { text: 'Read <page>the label</page>.', parts: { page: () => jsx('a', { text: 'no' }) } })`),
  ).toEqual([['Read <page>the label</page>.', "'Read <page>the label</page>.'"]])
})

test('words of tables, which may be recorded too, and texts that are put together stay', () => {
  expect(saidIn(`const words = { rust: message('Rust') }; say(words[kind]); say(\`\${a} b\`); write('Rust')`)).toEqual(
    [],
  )
})

test('texts are found wherever they stand whole', () => {
  expect(textsIn("const words = { rust: message('Rust') }; write(`Foam`, 'a' + b)")).toEqual(['Rust', 'Foam', 'a'])
})
