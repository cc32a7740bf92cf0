import type { Lift, LiftTrial } from '@dawnlift/core/campaign'
import { hourAt, type Plan } from '@dawnlift/core/plan'
import { makeStanding, standGeometry } from '@dawnlift/core/stand'
import { demoPlan, liftsOf } from './strips-and-shells.js'

const demos = ['torrenubia', 'tern-cottage']

/** What was set out for: the check of a demo's whole campaign, and one lift state in the scheduler's inner loop [ms]. */
const aims = { campaign: 200, state: 0.2 }

/** Temperatures the mix may have at the nozzle: a search asks each lift at the hours of many days. */
const temperatures = Array.from({ length: 21 }, (_, i) => 10 + i)

/** Every lift of a campaign checked from its beads on, safety, limit and place; and what one ask costs a search that asks many. */
export async function bench() {
  const plans: { readonly demo: string; readonly plan: Plan }[] = []
  for (const demo of demos) plans.push({ demo, plan: await demoPlan(demo) })
  return plans.flatMap(({ demo, plan }) => {
    // copies that no cache has seen
    const unseen = { ...plan, bands: structuredClone(plan.bands) }
    const trials = liftsOf(plan).map(lift => trialOf(plan, lift))
    const states = trials.flatMap(statesOf)
    asked.push(1, 1, states.length)
    return [
      {
        name: `${demo}: ${trials.length} lifts checked for the first time`,
        once: true,
        run: () => trials.forEach(checked(unseen)),
      },
      {
        name: `${demo}: ${trials.length} lifts checked again, bays known`,
        run: () => trials.forEach(checked(plan)),
      },
      {
        name: `${demo}: ${states.length} lift states asked how many layers stand`,
        run: () => {
          const standing = standingOf(plan)
          for (const state of states) standing(state)
        },
      },
    ]
  })
}

const asked: number[] = []

export function report(rows: readonly { readonly name: string; readonly cpu: number }[]): readonly string[] {
  return rows.map(({ name, cpu }, i) => {
    const isState = asked[i]! > 1
    const [cost, aim] = isState ? [cpu / asked[i]!, aims.state] : [cpu, aims.campaign]
    return `${cost <= aim ? 'met' : 'NOT MET'}: ${cost.toPrecision(3)} ms CPU, aim ${aim} ms — ${name}${isState ? ', each' : ''}`
  })
}

function standingOf({
  job,
  sections,
  bands,
}: Plan): (lift: LiftTrial) => ReturnType<ReturnType<typeof makeStanding>> {
  const geometries = sections.map((section, i) =>
    standGeometry(section, job.walls, job.openings, job.print, bands[i]!.bands, job.units),
  )
  return makeStanding({ mix: job.mix, print: job.print, rules: job.rules, sections: geometries })
}

/** A check reads all there is to read: what is not read is not worked out. */
function checked(plan: Plan): (lift: LiftTrial) => void {
  const standing = standingOf(plan)
  return lift => {
    const { layers, safety, limit, governs } = standing(lift)
    if (!(layers > 0 && safety > 0 && limit.capacity > 0 && governs.place !== ''))
      throw new Error(`a planned lift of section ${lift.section} stands`)
  }
}

const trialOf = ({ campaign }: Plan, lift: Lift): LiftTrial => ({
  section: lift.section,
  firstLayer: lift.firstLayer,
  start: lift.start,
  layerEnds: lift.layerEnds,
  temperature: hourAt(campaign.hours, lift.start).mixTemperature,
})

/** The lift as it is and cut short by tenths, at every temperature. */
const statesOf = (lift: LiftTrial): readonly LiftTrial[] =>
  temperatures.flatMap(temperature =>
    Array.from({ length: 5 }, (_, tenth) => {
      const layers = Math.ceil(lift.layerEnds.length * (1 - tenth / 10))
      return { ...lift, temperature, layerEnds: lift.layerEnds.slice(0, layers) }
    }),
  )
