/** A number for a text, the same for the same one: keys made of numbers are short where their texts would be long. */
export interface TextNumbers {
  readonly of: (text: string) => number
  /** The number of what an object says; it is written down once. */
  readonly said: <T extends object>(value: T, say: (value: T) => string) => number
}

/** Some seasons of weather hour by hour. Beyond them texts are forgotten; no number is given twice. */
const mostTexts = 50_000

export function newTextNumbers(most: number = mostTexts): TextNumbers {
  const texts = new Map<string, number>()
  const objects = new WeakMap<object, number>()
  let last = 0
  const of = (text: string): number => {
    const known = texts.get(text)
    if (known !== undefined) return known
    if (texts.size >= most) texts.clear()
    texts.set(text, ++last)
    return last
  }
  return {
    of,
    said: (value, say) => {
      const number = objects.get(value) ?? of(say(value))
      objects.set(value, number)
      return number
    },
  }
}
