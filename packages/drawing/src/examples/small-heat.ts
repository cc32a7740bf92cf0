import { cureLifts } from '@dawnlift/core/cure'
import type { Plan } from '@dawnlift/core/plan'
import { type SectionBuckling, standChart, standGeometry } from '@dawnlift/core/stand'
import type { StandParts, WallHeatParts } from '../views/index.js'

/** Heat of the wall of one of the small plan's lifts, reckoned for real. */
export function smallHeat(plan: Plan, index: number): WallHeatParts {
  const among = plan.campaign.days.flatMap(day => day.lifts)
  const lift = among[index]!
  const [cure] = cureLifts(plan.job, plan.sections, [lift], plan.campaign.hours, { among })
  return {
    job: plan.job,
    lift,
    heat: cure!.heat,
    thickness: 0.3,
    cover: cure!.cover,
    steps: cure!.steps,
    hours: 36,
  }
}

/** The first layers of one of its lifts, laid four times as slowly; they outgrow what is allowed, so that the crossing shows. */
export function smallStand(plan: Plan, index: number): StandParts {
  const { job, sections, bands, campaign } = plan
  const lift = campaign.days.flatMap(day => day.lifts)[index]!
  const geometries = sections.map((section, n) =>
    standGeometry(section, job.walls, job.openings, job.print, bands[n]?.bands, job.units),
  )
  const chart = standChart(
    { mix: job.mix, print: job.print, rules: job.rules, sections: geometries },
    {
      section: lift.section,
      firstLayer: lift.firstLayer,
      layerEnds: lift.layerEnds.slice(0, 14).map(end => lift.start + 4 * (end - lift.start)),
      start: lift.start,
      temperature: 24,
    },
  )
  return { job, lift, chart }
}

/** A shape made by hand: an L of two walls, clamped at the foot, the long one bulging in one half wave. */
export function smallMode(): Pick<SectionBuckling, 'factor' | 'quick' | 'mode'> {
  const steps = 24
  const corner = (n: number): readonly [number, number] =>
    n <= steps ? [n / 4, 0] : [steps / 4, (n - steps) / 4]
  const positions = Array.from({ length: steps + 17 }, (_, n) => corner(n))
  const heights = Array.from({ length: 9 }, (_, level) => level / 10)
  const moves = positions.map((_, n) =>
    heights.map((height): readonly [number, number, number] => {
      const bulge = n < steps ? Math.sin((Math.PI * n) / steps) : 0
      return [0, bulge * (1 - Math.cos((Math.PI * height) / 1.6)), 0]
    }),
  )
  return {
    factor: 4.2,
    quick: { factor: 3.6, place: 'wall South wall, 2.00–4.00 m', what: 'wall' },
    mode: {
      positions,
      edges: positions.slice(1).map((_, n) => [n, n + 1] as const),
      heights,
      moves,
      largest: { position: steps / 2, level: 8 },
    },
  }
}
