import type { Job } from '@dawnlift/core/job'
import { accessZoneWidth } from '@dawnlift/core/stand'
import { lengthText } from '@dawnlift/drawing/paper'

export const engineerWords =
  'Screening values from the mix tests and published formulas. Local code, the local authority and a licensed engineer decide.'

/** What can hurt on a print day; each beside what it is about. */
export function standingCautions(job: Job): readonly string[] {
  const tallest = Math.max(...job.walls.map(wall => wall.top - wall.base))
  return [
    `Fresh wall: a zone of ${lengthText(Math.ceil(accessZoneWidth(tallest) * 10) / 10, job.units)} beside it (wall height + ${job.units === 'metric' ? '1.22 m' : '4 ft'}, OSHA 1926.706, written for masonry) only for those building it, on the far side of any scaffold; no leaning, no ladders.`,
    'Hose: pressure can whip it. Clamps and relief checked before the first stroke; stand clear at start and when clearing a blockage; let the pressure off before opening.',
    'Mix: burns skin and eyes. Gloves, boots, goggles; wash at once, change soaked clothes.',
    'Dust: bags and dry cuttings carry silica. Wet or extract it; masks as local rules say.',
    'Hands at the wall only with pump and nozzle stopped and the print lead’s word.',
  ]
}

export const liftingCaution =
  'Lintels: rated gear, nobody below, nobody between lintel and wall. The engineer says when it may carry load and whether it needs props.'
export const pourCaution =
  'Pours press on the shell: rate and height only as the engineer has approved for its strength at that age, proved by a trial pour. Nobody stands before a shell being filled; stop at the first crack or drip.'
