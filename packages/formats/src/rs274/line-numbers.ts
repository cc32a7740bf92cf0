import { ByteText } from './byte-text.js'

const lineEnd = 10

/** N words 1 to 99999 and round again, on every line. */
export function lineNumbered(bytes: Uint8Array): Uint8Array {
  const text = new ByteText()
  let n = 0
  for (let start = 0; start < bytes.length; ) {
    const end = bytes.indexOf(lineEnd, start) + 1
    n = (n % 99999) + 1
    text.words('N').decimal(n, 0).words(' ').bytes(bytes, { from: start, to: end })
    start = end
  }
  return text.taken()
}
