import type { Lift } from '@dawnlift/core/campaign'
import { sayQuantity } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'
import { lengthText, volumeText } from '@dawnlift/drawing/paper'
import { strengthText } from './strength-text.js'

type Pour = Plan['pours'][number]

/** How a column is filled, with its caution beside the numbers. */
export interface PourRow {
  readonly column: string
  readonly wall: string
  /** Where its height is up: lift and date; absent while the campaign ends before. */
  readonly after?: { readonly lift: string; readonly date: string }
  readonly how: string
  readonly caution: string
}

export const pourRows = (plan: Plan): readonly PourRow[] => plan.pours.map(pour => pourRow(plan, pour))

/**
 * Columns whose shell came up on the print day before this one: they are next to fill. The last day also tells those that
 * come up on it, as no later sheet could.
 */
export function poursOn(plan: Plan, date: string): readonly PourRow[] {
  const dates = plan.campaign.days.map(day => day.date)
  const index = dates.indexOf(date)
  const told = index === dates.length - 1 ? [dates[index - 1], date] : [dates[index - 1]]
  return pourRows(plan).filter(row => row.after && told.includes(row.after.date))
}

function pourRow(plan: Plan, pour: Pour): PourRow {
  const { job } = plan
  const after = upAfter(plan, pour)
  const wall = job.walls.find(({ id }) => id === pour.wall)?.name ?? pour.wall
  return {
    column: pour.cavity,
    wall,
    ...(after ? { after: { lift: after.lift.id, date: after.date } } : {}),
    how: howWords(plan, pour, after?.lift.id),
    caution: cautionWords(plan, pour),
  }
}

/** The lift that brings the column's station to its top. */
function upAfter(
  { job, sections, campaign }: Plan,
  pour: Pour,
): { readonly lift: Lift; readonly date: string } | undefined {
  const column = job.columns.find(({ id }) => id === pour.cavity)
  const wall = job.walls.find(({ id }) => id === pour.wall)
  if (!column || !wall) return undefined
  const holding = sections.filter(section =>
    section.stretches.some(
      stretch => stretch.wall === wall.id && column.at >= stretch.from && column.at <= stretch.to,
    ),
  )
  return campaign.days
    .flatMap(day => day.lifts.map(lift => ({ lift, date: day.date })))
    .filter(({ lift }) => holding.some(({ id }) => id === lift.section))
    .find(({ lift }) => lift.lastLayer * job.print.layerHeight >= wall.top - job.print.layerHeight)
}

function howWords({ job }: Plan, pour: Pour, lift: string | undefined): string {
  const say = (value: number, unit: string) => sayQuantity(value, unit, job.units)
  const when = lift ? `after lift ${lift}: ` : ''
  const press = `A lift presses ${say(pour.pressure, 'Pa')} on the shell; it bears ${say(pour.bearable, 'Pa')} with the factors taken off.`
  if (pour.lifts === 0) return `${when}no pour yet: the shell bears no fill at its age.`
  const wait = pour.wait > 0 ? `, ${say(pour.wait, 's')} between lifts` : ''
  const rate =
    pour.rateMost === undefined
      ? ''
      : `, rising at most ${lengthText(pour.rateMost * 3600, job.units)} in an hour`
  const each = volumeText(pour.liftVolume, job.units)
  return `${when}${pour.lifts} ${pour.lifts === 1 ? 'lift' : 'lifts'} of at most ${lengthText(pour.liftHeight, job.units)} (${each})${wait}${rate}. ${press}`
}

/** The shell's verdict first: a shell that fails is not filled, whatever the numbers beside it say. */
function cautionWords({ job }: Plan, pour: Pour): string {
  const failed = pour.findings.filter(finding => finding.verdict === 'fail').map(finding => finding.check)
  const verdict =
    failed.length > 0
      ? `Do not fill: ${failed.map(check => check.replaceAll('-', ' ')).join(', ')} fails. `
      : ''
  const tall = lengthText(pour.tallestLift, job.units)
  if (pour.ageNeeded === undefined) return `${verdict}${tall} at once this shell never bears.`
  const age = sayQuantity(pour.ageNeeded, 's', job.units)
  return `${verdict}${tall} at once needs a shell of ${strengthText(pour.strengthNeeded, job.units)}, reckoned at ${age} at ${sayQuantity(job.mix.reference, '°C', job.units)}: show it by cubes or cylinders first.`
}
