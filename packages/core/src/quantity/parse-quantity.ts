import type { Problem, Result } from '../result/index.js'
import { failure, success } from '../result/index.js'
import { toInside } from './convert-unit.js'
import type { Dimension, Unit } from './dimension.js'
import { numberPattern, readNumber } from './number-text.js'
import { dimensionWords, findUnit, plainSymbol, unitNames } from './unit-symbol.js'
import { unitTable } from './unit-table.js'

interface Term {
  readonly number: string
  readonly symbol: string
}

/**
 * Reads a quantity as people write it, into the unit the program uses inside:
 * `2.46 m`, `2,5 m`, `8' 1 1/2"`, `8 ft 1 in`, `1/2 in`, `32 °C`, `15 psi`, `1 h 30 min`, `12 %`.
 * Problems carry an empty `at`; the caller knows where the text stood.
 */
export function parseQuantity(text: string, dimension: Dimension): Result<number> {
  const plain = text.trim().replace(/−/g, '-')
  if (plain === '')
    return problem('empty', `nothing is written here; write a value like ${example(dimension)}`)
  const first = termAt(plain, 0)
  if (!first)
    return problem(
      'not-a-number',
      `“${text}” does not start with a number; write a value like ${example(dimension)}`,
    )
  const whole: Term = { number: first, symbol: plain.slice(first.length).trim() }
  if (findUnit(whole.symbol, dimension)) return singleTerm(whole, plain, dimension)
  const terms = familyTerms(plain)
  return terms && terms.length > 1 ? sumOfTerms(terms, plain, dimension) : singleTerm(whole, plain, dimension)
}

const example = (dimension: Dimension): string => `“${unitTable[dimension].example}”`

const problem = (what: string, say: string, values?: Problem['values']): Result<never> =>
  failure([{ code: `quantity/${what}`, at: '', say, ...(values ? { values } : {}) }])

function termAt(text: string, at: number): string | undefined {
  numberPattern.lastIndex = at
  return numberPattern.exec(text)?.[0]
}

/** Splits `8 ft 1 1/2 in`, `8'-1"` or `1 h 30 min`; only plain words and foot or inch marks may be chained. */
function familyTerms(text: string): readonly Term[] | undefined {
  const terms: Term[] = []
  const symbol = /\s*([a-z]+|['"′″’”])\s*/iy
  let at = 0
  while (at < text.length) {
    const number = termAt(text, at)
    if (!number) return undefined
    symbol.lastIndex = at + number.length
    const found = symbol.exec(text)
    if (!found) return undefined
    terms.push({ number, symbol: found[1] ?? '' })
    at = symbol.lastIndex
    // A drafter's hyphen joins feet and inches, it is no minus: 8'-1".
    if (/[-–]/.test(text[at] ?? '')) at += 1
  }
  return terms
}

function numberOf(term: Term, text: string): Result<number> {
  const reading = readNumber(term.number)
  if (reading.kind === 'number') return success(reading.value)
  if (reading.kind === 'none')
    return problem('not-a-number', `“${term.number}” in “${text}” is not a number we can use`)
  const { asDecimal, asThousands } = reading
  return problem(
    'ambiguous-comma',
    `the comma in “${text}” can mean ${asDecimal} or ${asThousands}; write one of the two`,
  )
}

function unitOf(term: Term, text: string, dimension: Dimension): Result<Unit> {
  const unit = findUnit(term.symbol, dimension)
  if (unit) return success(unit)
  const names = unitNames(dimension)
  if (term.symbol === '')
    return problem(
      'no-unit',
      `“${text}” has no unit; write a value with its unit, like ${example(dimension)}`,
    )
  const folded = plainSymbol(term.symbol).toLowerCase()
  const near = names.find(name => plainSymbol(name).toLowerCase() === folded)
  const hint = near ? `did you mean “${near}”?` : `allowed: ${names.join(', ')}`
  return problem(
    'unknown-unit',
    `“${term.symbol}” in “${text}” is not a unit of ${dimensionWords(dimension)}; ${hint}`,
  )
}

function singleTerm(term: Term, text: string, dimension: Dimension): Result<number> {
  const number = numberOf(term, text)
  if (!number.ok) return number
  const unit = unitOf(term, text, dimension)
  return unit.ok ? success(toInside(number.value, unit.value)) : unit
}

function sumOfTerms(terms: readonly Term[], text: string, dimension: Dimension): Result<number> {
  let sum = 0
  let last: Unit | undefined
  for (const term of terms) {
    const number = numberOf(term, text)
    if (!number.ok) return number
    const unit = unitOf(term, text, dimension)
    if (!unit.ok) return unit
    const follows =
      !last || (last.family === unit.value.family && last.scale > unit.value.scale && number.value >= 0)
    if (!unit.value.family || !follows)
      return problem(
        'mixed-units',
        `“${text}” chains units that do not add up; write it like ${example(dimension)}`,
      )
    sum += toInside(Math.abs(number.value), unit.value)
    last = unit.value
  }
  return success(text.startsWith('-') ? -sum : sum)
}
