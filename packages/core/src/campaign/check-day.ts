import { addDays, instantAt, weekday } from '../clock/index.js'
import type { Finding } from '../result/index.js'
import type { Lift, PrintDay } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { fault } from './fault.js'

const SLACK = 5e-3

/** Whether the crew may and can work the day as planned: calendar, shift, set-up, change-overs, holds, wash-out. */
export function checkDay(input: CampaignInput, day: PrintDay): readonly Finding[] {
  return [...checkCalendar(input, day), ...checkShift(input, day), ...checkMoves(input, day)]
}

function checkCalendar(input: CampaignInput, day: PrintDay): readonly Finding[] {
  const { crew, calendar } = input
  const findings: Finding[] = []
  const off = !crew.workDays.includes(weekday(day.date)) || crew.daysOff.includes(day.date)
  if (off) findings.push(fault('day-off', day.date, 1, 0, 'crew', `Nobody works on ${day.date}.`))
  if (day.date < calendar.firstDay && calendar.now === undefined) {
    const say = `${day.date} is before the first day ${calendar.firstDay}.`
    findings.push(fault('first-day', day.date, 1, 0, 'days', say))
  }
  if (calendar.now !== undefined && day.start < calendar.now - SLACK) {
    findings.push(
      fault('past', day.date, day.start, calendar.now, 's', `${day.date} begins before the present moment.`),
    )
  }
  return findings
}

function checkShift(input: CampaignInput, day: PrintDay): readonly Finding[] {
  const { dayStart, dayEnd, longestShift } = input.crew
  const opens = instantAt(day.date, dayStart, input.timeZone)
  const throughMidnight = dayEnd <= dayStart || dayEnd >= 86400
  const closes = throughMidnight
    ? instantAt(addDays(day.date, 1), dayEnd % 86400, input.timeZone)
    : instantAt(day.date, dayEnd, input.timeZone)
  const shift = day.end - day.start
  const findings: Finding[] = []
  if (day.start < opens - SLACK) {
    const say = `The crew would set up before the day starts on ${day.date}.`
    findings.push(fault('day-start', day.date, day.start, opens, 's', say))
  }
  if (day.end > closes + SLACK) {
    const say = `Wash-out would end after the day ends on ${day.date}.`
    findings.push(fault('day-end', day.date, day.end, closes, 's', say))
  }
  const began = input.shiftBegan
  if (began !== undefined && began >= opens && began < closes && day.end > began + longestShift + SLACK) {
    const say = `The shift of ${day.date} began at ${began} and would end after ${longestShift} s.`
    findings.push(fault('shift', day.date, day.end - began, longestShift, 's', say))
  }
  if (shift > longestShift + SLACK) {
    const say = `The shift of ${day.date} lasts ${shift} s; ${longestShift} s is the longest.`
    findings.push(fault('shift', day.date, shift, longestShift, 's', say))
  }
  return findings
}

/** The nozzle is in one place at a time, and crew time between lifts is really there. */
function checkMoves(input: CampaignInput, day: PrintDay): readonly Finding[] {
  const { crew } = input
  const findings: Finding[] = []
  let free = day.start + crew.setUp
  for (const [i, lift] of day.lifts.entries()) {
    const needed = (i > 0 ? crew.changeOver : 0) + holdTime(input, lift, lift.firstLayer - 1)
    if (lift.start < free + needed - SLACK) {
      const say = `Lift ${lift.id} starts ${lift.start - free} s after the crew is free; moving and holds take ${needed} s.`
      findings.push(fault('moves', lift.id, lift.start - free, needed, 's', say))
    }
    free = lift.end
  }
  if (day.end < free + crew.washOut - SLACK) {
    const say = `Wash-out on ${day.date} has ${day.end - free} s; it takes ${crew.washOut} s.`
    findings.push(fault('wash-out', day.date, day.end - free, crew.washOut, 's', say))
  }
  return findings
}

/** Planned stops on top of one layer of the lift's section, together. */
export function holdTime(input: CampaignInput, lift: Lift, layer: number): number {
  const work = input.work.find(one => one.section === lift.section)
  let time = 0
  for (const hold of work?.holds ?? []) if (hold.afterLayer === layer) time += hold.duration
  return time
}
