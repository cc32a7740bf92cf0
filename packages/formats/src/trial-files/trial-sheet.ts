import type { NextTrial } from '@dawnlift/core/trial'

/** The sheet to fill in beside the machine: a line for each trial that is worth running, what is set written in. */
export function trialSheet(next: readonly NextTrial[]): string {
  const heads =
    'kind,setting,caught_kg,during_s,flow_L/min,speed_mm/s,width_mm,height_mm,distance_mm,straightspeed_mm/s,straightwidth_mm,note'
  const rows = next.map(({ kind, setting, unit, why }) => {
    const cells = Array.from({ length: 12 }, () => '')
    cells[0] = kind
    if (unit === 'S') cells[1] = String(Number(setting.toPrecision(3)))
    else cells[5] = String(Math.round(setting * 1000))
    cells[11] = why.replaceAll(',', ';')
    return cells.join(',')
  })
  return `${[heads, ...rows].join('\n')}\n`
}
