/** A number in digits, without a power of ten where it is small: exactly the number, as short as can be. */
export function plain(value: number): string {
  const text = String(value)
  const [, sign, digit, rest = '', zeros] = /^(-?)(\d)(?:\.(\d+))?e-(\d+)$/.exec(text) ?? []
  return digit === undefined ? text : `${sign}0.${'0'.repeat(Number(zeros) - 1)}${digit}${rest}`
}
