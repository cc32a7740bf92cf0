import type { Embed } from '@dawnlift/core/job'
import type { Plan } from '@dawnlift/core/plan'
import { smallJob } from './small-job.js'
import { smallPlan } from './small-plan.js'

/** The small plan made hard to draw: long names, names from right to left, feet and inches, and a wall full of boxes. */
export function awkwardPlan(): Plan {
  const names: Readonly<Record<string, string>> = {
    S: 'South-south-westerly retaining and boundary wall towards the lower orchard (existing survey mark 14)',
    E: 'קיר מזרחי',
    N: 'الجدار الشمالي',
    W: 'Westwandabschnittsbezeichnungsnummerierungszusatz',
  }
  const boxes: Embed[] = Array.from({ length: 28 }, (_, index) => ({
    id: index === 3 ? 'socket-by-the-long-kitchen-counter-left' : `Q${index + 1}`,
    wall: index < 20 ? 'S' : 'W',
    kind: 'box',
    trade: 'electrical',
    face: index % 2 ? 'left' : 'right',
    at: index < 20 ? 2.25 + (index % 10) * 0.13 : 0.4 + (index - 20) * 0.4,
    bottom: index < 10 ? 0.3 : 1.2,
    width: 0.08,
    height: 0.08,
    depth: 0.05,
    method: index % 3 ? 'gap' : 'cut',
  }))
  return smallPlan({
    ...smallJob,
    name: 'ביתן הבוסתן العليا & <Orchard> pavilion “Nº 3”, phase two of the northern extension',
    revision: 'draft-for-review-2026-07-01-b',
    units: 'imperial',
    walls: smallJob.walls.map(wall => ({ ...wall, name: names[wall.id] ?? wall.name })),
    embeds: boxes,
  })
}
