/** A comment as RS-274 allows it: one pair of brackets, no nesting, one line, plain characters. */
export function comment(words: string): string {
  return `(${clean(words)})`
}

/** A comment the controller shows to the operator. */
export const message = (words: string): string => `(MSG, ${clean(words)})`

/** A line may hold 256 characters; leave room for a line number. */
const longest = 200

const clean = (words: string): string => (isPlain(words) ? words : cleaned(words))

/** Words that may stand as they are: by far the most. */
function isPlain(words: string): boolean {
  if (words.length > longest) return false
  for (let i = 0; i < words.length; i++) {
    const code = words.charCodeAt(i)
    if (code < 32 || code > 126 || isBracket[code]) return false
  }
  return true
}

const isBracket = Array.from({ length: 127 }, (_, code) => '()[]{}'.includes(String.fromCharCode(code)))

const cleaned = (words: string): string =>
  words
    .normalize('NFKD')
    .replace(/[([{]/g, '<')
    .replace(/[)\]}]/g, '>')
    .replace(/\p{M}/gu, '')
    .replace(/[^ -~]/g, '?')
    .slice(0, longest)
