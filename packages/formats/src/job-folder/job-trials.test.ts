import { initGeometry } from '@dawnlift/core/geometry'
import { machineProfile } from '@dawnlift/core/machine'
import { planJob } from '@dawnlift/core/plan'
import { layerRouteOf, stopTurns } from '@dawnlift/core/route'
import type { Quantities } from '@dawnlift/core/tally'
import { newJobText } from '@dawnlift/document/job'
import { expect, it } from 'vitest'
import { machineFromTrials } from './job-trials.js'
import { openJob } from './open-job.js'

const machine = machineProfile('gantry-12')!
const heads = 'kind,setting,caught_kg,during_s,flow_L/min,speed_mm/s,width_mm,height_mm,distance_mm'
const sheet = (...rows: readonly string[]) => {
  const content = new TextEncoder().encode([heads, ...rows].join('\n'))
  return (name: string) => (name === 'trials.csv' ? content : undefined)
}
const machineOf = (...rows: readonly string[]) => {
  const read = machineFromTrials('trials.csv', sheet(...rows), machine, 2000)
  if (!read.ok) throw new Error(read.problems[0]?.say)
  return read.value
}

it('leaves the machine as it is where the job names no trials', () => {
  const read = machineFromTrials(undefined, () => undefined, machine, 2000)
  expect(read.ok && read.value).toBe(machine)
})

it('sets the pump by what was weighed', () => {
  // hand: 20 kg in 60 s at 2000 kg/m³ are 10 L/min at S 50: S 5 for each L/min
  const { pump } = machineOf('pump,25,10,60', 'pump,50,20,60', 'pump,75,30,60')
  expect(pump.settingPerFlow * (1e-3 / 60)).toBeCloseTo(5, 6)
})

it('sets the pump to more where beads come out thin, and gives less bead at the most', () => {
  // hand: 50 × 20 mm with half-round sides are 914.2 mm²; at 100 mm/s they take 5.485 L/min, and 10 % more was pumped
  const bead = 'bead,,,,6.0332,100,50,20,'
  const { pump } = machineOf(bead, bead, bead)
  expect(pump.settingPerFlow / machine.pump.settingPerFlow).toBeCloseTo(1.1, 3)
  expect(pump.flowMost / machine.pump.flowMost).toBeCloseTo(1 / 1.1, 3)
})

it('starts and stops the pump by the lags tried', () => {
  const { pump } = machineOf('start,,,,,100,,,80', 'stop,,,,,100,,,40')
  expect(pump.startLag).toBeCloseTo(0.8, 9)
  expect(pump.stopLag).toBeCloseTo(0.4, 9)
})

it('names a sheet that is not there, and trials that cannot be', () => {
  const gone = machineFromTrials('gone.csv', sheet('pump,1,1,1'), machine, 2000)
  expect(gone.ok ? '' : gone.problems[0]!.code).toBe('job/no-file')
  const bad = machineFromTrials(
    'trials.csv',
    sheet('pump,0,1,60', 'pump,1,1,60', 'pump,2,1,60'),
    machine,
    2000,
  )
  expect(bad.ok ? '' : bad.problems[0]!.code).toBe('trial/pump-value')
})

it('is what a job is planned with that names its sheet', () => {
  const text = newJobText('Yard')
  const named = text.replace(/^machine:\n/m, 'machine:\n  trials: trials.csv\n')
  expect(named).not.toBe(text)
  const opened = openJob({ document: named, read: sheet('pump,25,10,60', 'pump,50,20,60', 'pump,75,30,60') })
  const before = openJob({ document: text, read: () => undefined })
  if (!opened.ok || !before.ok) throw new Error('both jobs open')
  const share = opened.value.job.machine.pump.settingPerFlow / before.value.job.machine.pump.settingPerFlow
  // the density of the mix comes from the job: 10 kg in 60 s at S 25
  const perFlow = 25 / (10 / opened.value.job.mix.density / 60)
  expect(share * before.value.job.machine.pump.settingPerFlow).toBeCloseTo(perFlow, 3)
  expect(share).not.toBeCloseTo(1, 2)
})

it('counts bags and water by what was pumped, not by what lies', async () => {
  await initGeometry()
  const text = newJobText('Yard')
  const named = text.replace(/^machine:\n/m, 'machine:\n  trials: trials.csv\n')
  // hand, as above: 10 % more is pumped than lies; at a start 0.8 s are pumped ahead, after a stop 0.4 s run out
  const bead = 'bead,,,,6.0332,100,50,20,'
  const lags = ['start,,,,,100,,,80', 'stop,,,,,100,,,40']
  const planned = async (document: string, ...rows: readonly string[]) => {
    const opened = openJob({ document, read: sheet(...rows) })
    if (!opened.ok) throw new Error(opened.problems[0]?.say)
    const plan = await planJob(opened.value)
    const sum = (of: (lift: Quantities) => number) =>
      plan!.tally.byLift.reduce((total, lift) => total + of(lift), 0)
    return {
      plan: plan!,
      bags: sum(lift => lift.bags),
      water: sum(lift => lift.water),
      volume: sum(lift => lift.volume),
    }
  }
  const drawn = await planned(text)
  const thin = await planned(named, bead, bead, bead)
  expect(thin.bags / drawn.bags).toBeCloseTo(1.1, 3)
  expect(thin.water / drawn.water).toBeCloseTo(1.1, 3)
  expect(drawn.plan.tally.waste!.how).not.toContain('trials:')
  expect(thin.plan.tally.waste!.how).toMatch(
    /volumes are what is pumped, by your trials: 90\.9 % of the flow becomes bead$/,
  )

  const lagging = await planned(named, ...lags)
  const { routes, bands } = lagging.plan
  // hand: every chain of passes begins with 0.4 s of its flow more than lies; sharp corners with 0.8 s
  const extra = bands.flatMap((section, s) =>
    Array.from({ length: section.layers }, (_, i) => layerRouteOf(routes[s]!, i + 1)).map(
      ({ passes, travels }) =>
        passes.reduce((sum, pass, i) => {
          const before = travels[i]?.joined ? passes[i - 1] : undefined
          const corners = stopTurns(pass, before, lagging.plan.job.machine).length
          return sum + pass.flow * ((before ? 0 : 0.4) + 0.8 * corners)
        }, 0),
    ),
  )
  const all = extra.reduce((sum, each) => sum + each, 0)
  expect(all).toBeGreaterThan(0.01)
  expect(lagging.volume - drawn.volume).toBeCloseTo(all, 6)
}, 60_000)
