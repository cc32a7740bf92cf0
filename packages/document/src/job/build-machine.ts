import { type Machine, machineProfile, machineProfiles } from '@dawnlift/core/machine'
import { formatQuantity } from '@dawnlift/core/quantity'
import { closestName } from '@dawnlift/core/result'
import { given } from './build-types.js'
import type { JobDocument } from './job-schema.js'
import type { Ledger } from './ledger.js'

type MachineBlock = JobDocument['machine']
type Units = 'metric' | 'imperial'

/** The machine of the job: its profile, overwritten by what the job says. */
export function buildMachine(block: MachineBlock, units: Units, ledger: Ledger): Machine | undefined {
  const profile = machineProfile(block.profile)
  if (!profile) {
    const names = machineProfiles.map(each => each.name)
    const near = closestName(block.profile, names)
    const hint = near ? `did you mean “${near}”?` : `known: ${names.join(', ')}`
    return ledger.wrong(
      'job/unknown-profile',
      ['machine', 'profile'],
      `There is no machine profile “${block.profile}”; ${hint}`,
    )
  }
  noteProfile(block, profile, units, ledger)
  const machine = merged(block, profile)
  checkMachine(machine, ledger)
  return machine
}

function merged(block: MachineBlock, profile: Machine): Machine {
  const { profile: _, origin: __, turn: ___, trials: ____, reach, pump, words, ...rest } = block
  const { settingAtMost, ...flows } = pump
  const flowMost = flows.flowMost ?? profile.pump.flowMost
  const settingPerFlow =
    settingAtMost === undefined
      ? profile.pump.settingPerFlow
      : (settingAtMost - (flows.settingIdle ?? 0)) / flowMost
  return {
    ...profile,
    ...given(rest),
    reach: { ...profile.reach, ...given(reach) },
    pump: { ...profile.pump, ...given(flows), settingPerFlow },
    words: { ...profile.words, ...given(words) },
  }
}

function checkMachine(machine: Machine, ledger: Ledger): void {
  for (const axis of ['x', 'y', 'z'] as const) {
    const [from, to] = machine.reach[axis]
    if (to <= from)
      ledger.wrong(
        'job/reach',
        ['machine', 'reach', axis],
        `The reach ends at ${ledger.said(to)}, before it starts at ${ledger.said(from)}; swap the two.`,
      )
  }
  if (machine.pump.flowLeast >= machine.pump.flowMost)
    ledger.wrong(
      'job/pump-flow',
      ['machine', 'pump', 'flowLeast'],
      'The least flow of the pump is not below its greatest flow.',
    )
  if (!(machine.pump.settingPerFlow > 0))
    ledger.wrong(
      'job/pump-setting',
      ['machine', 'pump', 'settingIdle'],
      `The pump begins to deliver at S ${machine.pump.settingIdle}, not below the S of its greatest flow; swap settingIdle and settingAtMost.`,
    )
  if (machine.headingRate > 0 && (machine.headingAcceleration <= 0 || machine.headingTravel <= 0))
    ledger.wrong(
      'job/heading',
      ['machine', 'headingRate'],
      'A nozzle that turns needs headingAcceleration and headingTravel above zero.',
    )
}

/** Every machine value that comes from the profile is listed: it belongs to nobody's machine. */
function noteProfile(block: MachineBlock, profile: Machine, units: Units, ledger: Ledger): void {
  const source = `profile ${profile.name}: common practice, no source`
  const why = 'measure it on your machine and write it into the job'
  const note = (at: string, missing: boolean, value: string) => {
    if (missing) ledger.note({ at: `machine.${at}`, value, source, why })
  }
  const length = (value: number) => formatQuantity(value, 'length', units)
  for (const axis of ['x', 'y', 'z'] as const)
    note(`reach.${axis}`, !block.reach[axis], profile.reach[axis].map(length).join(' … '))
  for (const key of ['printSpeedMost', 'travelSpeed', 'liftSpeed'] as const)
    note(key, block[key] === undefined, formatQuantity(profile[key], 'speed', units))
  note(
    'acceleration',
    block.acceleration === undefined,
    formatQuantity(profile.acceleration, 'acceleration', units),
  )
  for (const key of ['cornerDeviation', 'travelClearance'] as const)
    note(key, block[key] === undefined, length(profile[key]))
  note('headingRate', block.headingRate === undefined, formatQuantity(profile.headingRate, 'turnRate', units))
  note(
    'headingAcceleration',
    block.headingAcceleration === undefined,
    formatQuantity(profile.headingAcceleration, 'turnAcceleration', units),
  )
  note(
    'headingTravel',
    block.headingTravel === undefined,
    formatQuantity(profile.headingTravel, 'angle', units),
  )
  for (const key of ['flowLeast', 'flowMost'] as const)
    note(`pump.${key}`, block.pump[key] === undefined, formatQuantity(profile.pump[key], 'flow', units))
  for (const key of ['startLag', 'stopLag'] as const)
    note(
      `pump.${key}`,
      block.pump[key] === undefined,
      formatQuantity(profile.pump[key], 'time', units, { unit: 's' }),
    )
  note(
    'pump.pressureMost',
    block.pump.pressureMost === undefined,
    formatQuantity(
      profile.pump.pressureMost,
      'pressure',
      units,
      units === 'metric' ? { unit: 'bar', step: 0.1 } : {},
    ),
  )
  note(
    'pump.settingAtMost',
    block.pump.settingAtMost === undefined,
    `${Math.round(profile.pump.settingPerFlow * profile.pump.flowMost * 1000) / 1000}`,
  )
  note(
    'words',
    Object.values(block.words).every(each => each === undefined),
    `${profile.words.rotary}, ${profile.words.pumpOn}, ${profile.words.units}`,
  )
}
