import { isDate } from '@dawnlift/core/clock'
import { type Dimension, dimensionWords, parseClock, parseQuantity, unitTable } from '@dawnlift/core/quantity'
import { closestName } from '@dawnlift/core/result'
import { z } from 'zod'
import { type Default, type DefaultPath, defaultTable } from './default-table.js'

/** Bounds that no building site leaves: they catch slips like `1e300 m` or millimetres typed as metres. */
const bounds: Readonly<Partial<Record<Dimension, readonly [number, number]>>> = {
  length: [-10_000, 10_000],
  time: [0, 366 * 86400],
  speed: [0, 20],
  windSpeed: [0, 120],
  acceleration: [0, 100],
  flow: [0, 1],
  mass: [0, 1e7],
  massRate: [0, 1e3],
  massPerArea: [0, 1e3],
  density: [1, 10_000],
  pressure: [0, 1e12],
  pressureRate: [-1e9, 1e9],
  pressureBend: [-1e9, 1e9],
  viscosity: [0, 1e6],
  temperature: [-90, 120],
  temperatureDifference: [-100, 100],
  angle: [-200, 200],
  turnRate: [0, 1000],
  turnAcceleration: [0, 10_000],
  share: [0, 100],
  evaporation: [0, 100],
  rain: [0, 1000],
  rateConstant: [0, 10],
  heatPerMass: [0, 1e7],
  radiationPerDay: [0, 1e8],
}

export interface Bounds {
  readonly least?: number
  readonly most?: number
  /** The value itself is not allowed to equal `least`. */
  readonly above?: boolean
}

/** What zod says of a value of the wrong type, in our words. */
export function typeSay(input: unknown, wanted: string): string {
  if (input === undefined) return `is missing; write ${wanted}`
  if (typeof input === 'number' && wanted.includes('unit'))
    return `the bare number ${input} has no unit; write ${wanted}`
  const found = input === null ? 'nothing' : Array.isArray(input) ? 'a list' : describe(input)
  return `${found} stands here; write ${wanted}`
}

const describe = (input: unknown): string =>
  typeof input === 'object'
    ? 'a block of keys'
    : `${typeof input === 'string' ? 'the text' : `the ${typeof input}`} “${String(input).slice(0, 60)}”`

const textField = (wanted: string) => z.string({ error: issue => typeSay(issue.input, wanted) })

function refuse(context: z.core.$RefinementCtx, code: string, message: string): never {
  context.addIssue({ code: 'custom', message, params: { problem: code } })
  return z.NEVER
}

/** A quantity written with its unit; a number in the unit used inside comes out. */
export function quantity(dimension: Dimension, own: Bounds = {}) {
  const [least, most] = bounds[dimension] ?? [-1e12, 1e12]
  const low = own.least ?? least
  const high = own.most ?? most
  const example = unitTable[dimension].example
  const read = (input: string, context: z.core.$RefinementCtx): number => {
    const result = parseQuantity(input, dimension)
    if (!result.ok)
      return refuse(context, result.problems[0]?.code ?? 'job/value', result.problems[0]?.say ?? '')
    const inside = unitTable[dimension].inside
    if (result.value < low || result.value > high || (own.above && result.value === low))
      return refuse(
        context,
        'job/out-of-range',
        `${input} is out of range; allowed is ${own.above ? `more than ${low}, up to` : `${low} to`} ${high} ${inside}`.trim(),
      )
    return result.value
  }
  return textField(`a value with its unit, like “${example}”`)
    .transform(read)
    .meta({ description: `${dimensionWords(dimension)} with its unit, like ${example}` })
}

/** A share may also be a plain number: 0.12 or 12 %. */
export const share = (own: Bounds = { least: 0, most: 1 }) =>
  z
    .union([z.string(), z.number()], { error: issue => typeSay(issue.input, 'a share like “12 %” or 0.12') })
    .transform(String)
    .pipe(quantity('share', own))
    .meta({ description: 'A share, like 12 % or 0.12' })

/** A quantity with a row in the table of defaults. */
export function assumedQuantity(path: DefaultPath, own: Bounds = {}) {
  const { dimension, text }: Default = defaultTable[path]
  return dimension === 'share'
    ? share(own).prefault(text)
    : quantity(dimension ?? 'length', own).prefault(text)
}

export const count = (least: number, most: number) =>
  z
    .number({ error: issue => typeSay(issue.input, `a number from ${least} to ${most}`) })
    .min(least, { error: issue => `${String(issue.input)} is too small; allowed is ${least} to ${most}` })
    .max(most, { error: issue => `${String(issue.input)} is too large; allowed is ${least} to ${most}` })

export const clock = () =>
  textField('a time of day like “5:00”').transform((input, context) => {
    const result = parseClock(input)
    return result.ok ? result.value : refuse(context, 'job/clock', result.problems[0]?.say ?? '')
  })

export const yesNo = () =>
  z
    .union([z.boolean(), z.enum(['yes', 'no'])], { error: issue => typeSay(issue.input, '“yes” or “no”') })
    .transform(value => value === true || value === 'yes')

/** Text for people: any script and direction, no control characters. */
export const words = (most = 200) =>
  textField('a text').superRefine((input, context) => {
    if (input.trim() === '') refuse(context, 'job/empty', 'is empty; write a text')
    if (input.length > most)
      refuse(context, 'job/too-long', `is ${input.length} characters long; at most ${most}`)
    if (/\p{Cc}/u.test(input))
      refuse(context, 'job/control-character', 'contains a control character; remove it')
  })

/** A name other places refer to. */
export const identifier = () => words(60)

/** A file beside the job: relative, forward slashes, never out of the folder. */
export const file = () =>
  words(255).superRefine((input, context) => {
    const parts = input.split('/')
    if (/^([a-z]:|\/|~)|\\|:\/\//i.test(input) || parts.includes('..'))
      refuse(
        context,
        'job/path-leaves-folder',
        `“${input}” leaves the job’s folder; put the file beside job.yaml and write its name`,
      )
    if (parts.some(part => part === ''))
      refuse(context, 'job/path', `“${input}” is not a file name; write one like “plan.dxf”`)
  })

export const date = () =>
  textField('a date like “2026-07-06”').superRefine((input, context) => {
    if (!isDate(input))
      refuse(context, 'job/date', `“${input}” is not a day of the calendar; write it like “2026-07-06”`)
  })

export const choice = <const T extends readonly [string, ...string[]]>(options: T) =>
  z.enum(options, {
    error: issue => {
      const near = typeof issue.input === 'string' ? closestName(issue.input, options) : undefined
      const allowed = `one of ${options.map(each => `“${each}”`).join(', ')}`
      return near
        ? `“${String(issue.input)}” is not known; did you mean “${near}”? Allowed is ${allowed}`
        : typeSay(issue.input, allowed)
    },
  })

/** A block of keys; unknown keys are problems. */
export const block = <T extends z.ZodRawShape>(shape: T) =>
  z.strictObject(shape, {
    error: issue => (issue.code === 'invalid_type' ? typeSay(issue.input, 'a block of keys') : undefined),
  })

/** A latitude or longitude, `39.05°`, `-3.2°` or `3.2° W`, in degrees. */
export const geographic = (positive: string, negative: string, most: number) =>
  textField(`degrees, like “39.05° ${positive}”`)
    .transform((input, context) => {
      const found = new RegExp(
        `^([-+]?)(\\d+(?:[.,]\\d+)?)\\s*(?:°|deg)\\s*([${positive}${negative}]?)$`,
      ).exec(input.trim().replace(/−/g, '-'))
      const degrees = Number(found?.[2]?.replace(',', '.'))
      const sign = (found?.[1] === '-' ? -1 : 1) * (found?.[3] === negative ? -1 : 1)
      return found && degrees <= most
        ? sign * degrees
        : refuse(
            context,
            'job/geographic',
            `“${input}” is not a bearing on the globe; write degrees up to ${most}, like “39.05° ${positive}”`,
          )
    })
    .meta({ description: `Degrees, ${positive} positive` })
