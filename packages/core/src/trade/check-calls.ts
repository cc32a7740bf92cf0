import { clockText, localTime } from '../clock/index.js'
import { sayQuantity } from '../limit/index.js'
import type { Finding } from '../result/index.js'
import type { Call } from './call.js'
import type { CallParts } from './embed-calls.js'
import { layerDown, liftsOf } from './lift-time.js'
import { hasLintel } from './lintel-calls.js'

/** What is wrong with the calls of a campaign: not scheduled, outside the crew's day, or a cut with no one moment for it. */
export function checkCalls(parts: CallParts, calls: readonly Call[]): readonly Finding[] {
  return [
    ...uncalled(parts, calls),
    ...afterHours(parts, calls),
    ...cutInSteps(parts, calls),
    ...unsureCuts(parts, calls),
    ...lateSeats(calls),
    ...crowdedMornings(parts, calls),
  ]
}

function uncalled({ job }: CallParts, calls: readonly Call[]): Finding[] {
  const called = new Set(calls.map(call => call.id.split('/')[0]))
  return [...job.embeds, ...job.openings.filter(hasLintel)]
    .filter(item => !called.has(item.id))
    .map(item => ({
      check: 'uncalled',
      at: item.id,
      demand: 1,
      capacity: 0,
      unit: 'call',
      source: 'the job',
      verdict: 'warn',
      say: `${item.id} in wall ${item.wall} has no call: the campaign does not reach its layers, or no section prints its place.`,
    }))
}

/** A window that ends before the crew's day starts, or starts after it ends. */
function afterHours({ job }: CallParts, calls: readonly Call[]): Finding[] {
  const zone = job.site.timeZone
  return calls.flatMap(call => {
    const from = localTime(call.from, zone)
    const until = localTime(call.until, zone)
    const overnight = from.date !== until.date
    if (overnight || (from.clock < job.crew.dayEnd && until.clock > job.crew.dayStart)) return []
    const late = from.clock >= job.crew.dayEnd
    return [
      {
        check: 'call-after-hours',
        at: call.id,
        demand: late ? from.clock : until.clock,
        capacity: late ? job.crew.dayEnd : job.crew.dayStart,
        unit: 's',
        source: 'the job',
        verdict: 'warn' as const,
        say: `${call.id} is called ${clockText(call.from, zone)}–${clockText(call.until, zone)} on ${call.date}, outside the crew's hours; somebody has to stay or come early.`,
      },
    ]
  })
}

/** The oldest layer is too stiff before the youngest is firm: the cut cannot be made in one go. */
function cutInSteps(parts: CallParts, calls: readonly Call[]): Finding[] {
  const zone = parts.job.site.timeZone
  return calls.flatMap(call => {
    if (call.cutDoubt === 'none') return [noWindow(parts, call)]
    const lift =
      call.cut && liftsOf(parts.campaign, call.section).find(candidate => candidate.id === call.lift)
    if (!lift) return []
    const oldest = parts.cutWindow(layerDown(lift, call.layerIn))
    const youngest = parts.cutWindow(layerDown(lift, call.layerOut))
    if (!oldest || !youngest || youngest.from <= oldest.until) return []
    return [
      {
        check: 'cut-in-steps',
        at: call.id,
        demand: youngest.from,
        capacity: oldest.until,
        unit: 's since 1970 UTC',
        source: parts.job.mix.cutSource,
        verdict: 'warn' as const,
        say: `${call.id}: layer ${call.layerIn} is too stiff to slice from ${clockText(oldest.until, zone)}, layer ${call.layerOut} firm only from ${clockText(youngest.from, zone)}. Cut it upwards in steps behind the nozzle, with the pump stopped while hands are at the wall.`,
      },
    ]
  })
}

/** Windows that hold for the best estimate alone, told once for all calls. */
function unsureCuts({ job }: CallParts, calls: readonly Call[]): Finding[] {
  const unsure = calls.filter(call => call.cutDoubt === 'unsure')
  if (unsure.length === 0) return []
  return [
    {
      check: 'cut-window-unsure',
      at: unsure.map(call => call.id).join(' '),
      demand: unsure.length,
      capacity: 0,
      unit: 'calls',
      source: job.mix.cutSource,
      verdict: 'warn',
      say: `The band of the mix is so wide that ${unsure.length === 1 ? 'one cut has' : `${unsure.length} cuts have`} no moment that suits all of it: the times hold for the best estimate. Try the wall with a knife before each cut, and write down the age at which it cut clean.`,
    },
  ]
}

/** The mix model gives no moment at which a cut is clean and still possible. */
const noWindow = ({ job }: CallParts, call: Call): Finding => ({
  check: 'no-cut-window',
  at: call.id,
  demand: job.mix.cutFrom,
  capacity: job.mix.cutUntil,
  unit: 'Pa',
  source: job.mix.cutSource,
  verdict: 'fail',
  say: `The mix gives ${call.id} no moment for a clean cut: it is firm at ${sayQuantity(job.mix.cutFrom, 'Pa', job.units)} and too stiff at ${sayQuantity(job.mix.cutUntil, 'Pa', job.units)}, or never gets firm within the tests. Leave a gap instead, or test when it can be sliced.`,
})

/** A lintel that cannot be set before the next lift over one of its seats starts. */
function lateSeats(calls: readonly Call[]): Finding[] {
  return calls
    .filter(call => call.what === 'lintel' && call.id.endsWith('/set'))
    .flatMap(set => {
      const opening = set.id.split('/')[0]
      const cutEnd = Math.max(
        ...calls
          .filter(call => call.what === 'lintel' && call.cut && call.id.startsWith(`${opening}/`))
          .map(c => c.from),
      )
      if (set.until > cutEnd) return []
      return [
        {
          check: 'lintel-late',
          at: set.id,
          demand: cutEnd,
          capacity: set.until,
          unit: 's since 1970 UTC',
          source: 'the job',
          verdict: 'fail' as const,
          say: `The lintel over ${opening} rests on two sections and one of them goes on before the other is cut. Print both up to the lintel before either goes on.`,
        },
      ]
    })
}

/** More lintels to set before a lift starts than the crew has time for, one after the other. */
function crowdedMornings({ job }: CallParts, calls: readonly Call[]): Finding[] {
  const zone = job.site.timeZone
  const sets = calls.filter(call => call.what === 'lintel' && call.id.endsWith('/set'))
  return [...new Set(sets.map(call => call.until))].flatMap(until => {
    const own = sets.filter(call => call.until <= until && call.until > until - 86_400)
    const needed = own.length * job.crew.lintelTime
    const had = until - Math.min(...own.map(call => call.from))
    if (needed <= had) return []
    return [
      {
        check: 'lintel-crew',
        at: own.map(call => call.id.split('/')[0]).join(' '),
        demand: needed,
        capacity: had,
        unit: 's',
        source: 'the job',
        verdict: 'warn' as const,
        say: `${own.length} lintels are to be set by ${clockText(until, zone)} on ${localTime(until, zone).date}: ${Math.round(needed / 60)} min of work, ${Math.round(had / 60)} min of time. Start earlier, or bring a second crew.`,
      },
    ]
  })
}
