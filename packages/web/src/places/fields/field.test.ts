import { describe, expect, it } from 'vitest'
import { editedJob, type Field, fieldText, resetField, standingOf, typedInto } from './index.js'

const job = `# ours
dawnlift: 1
name: Shed
site: { name: Lane 3, latitude: 39°, longitude: -3°, timeZone: Europe/Madrid }
calendar: { firstDay: 2026-07-06 }
weather:
  normals:
${'    - { high: 20 °C, low: 10 °C, dewPoint: 8 °C, wind: 10 km/h, rainDays: 3, rain: 20 mm, cloud: 30 % }\n'.repeat(12)}rules:
  liftHeight: 90 cm # the engineer's
  mixTemperatureMost: 32 °C
`
const height: Field = {
  path: ['rules', 'liftHeight'],
  label: 'Lift',
  kind: { kind: 'quantity', dimension: 'length' },
}
const value = (result: ReturnType<typeof typedInto>) => {
  if (!result.ok) throw new Error(result.problems.map(problem => problem.say).join(' '))
  return result.value
}

describe('a value typed into the job', () => {
  it('stands in the document in the unit it was typed in, beside its comment', () =>
    expect(value(typedInto(job, height, `3' 6"`))).toMatch(/liftHeight: .*3' 6.* # the engineer's/))
  it('leaves every other line as it was', () => {
    const before = job.split('\n').filter(line => !line.includes('liftHeight'))
    const after = value(typedInto(job, height, '1.1 m'))
      .split('\n')
      .filter(line => !line.includes('liftHeight'))
    expect(after).toEqual(before)
  })
  it('without a unit is refused with what to write', () =>
    expect(typedInto(job, height, '3')).toMatchObject({ ok: false }))
  it('beyond what a site can mean is refused with the range', () => {
    const typed = typedInto(job, height, '90 m')
    expect(typed.ok ? '' : typed.problems[0]?.say).toMatch(/90 m is out of range/)
  })
  it('may be a list of days off, or none', () => {
    const days: Field = { path: ['crew', 'daysOff'], label: 'Days off', kind: { kind: 'dates' } }
    expect(value(typedInto(job, days, '2026-07-17, 2026-07-25'))).toMatch(/daysOff:[\s\S]*2026-07-25/)
    expect(typedInto(job, days, '').ok).toBe(true)
    expect(typedInto(job, days, '17 July').ok).toBe(false)
  })
})

describe('a value that may be left out', () => {
  const stock: Field = {
    path: ['batching', 'silo', 'stock'],
    label: 'Silo',
    kind: { kind: 'quantity', dimension: 'mass' },
    without: 'always enough',
    within: ['batching', 'silo'],
  }
  const loads: Field = {
    path: ['batching', 'silo', 'loads'],
    label: 'Loads',
    kind: { kind: 'loads' },
    without: '',
  }
  it('is taken out by an empty field, with what has no meaning without it', () => {
    const filled = value(typedInto(job, stock, '6 t'))
    const loaded = value(typedInto(filled, loads, '2026-07-08 06:00 25 t; 2026-07-15 06:00 25 t'))
    expect(loaded).toMatch(/stock: 6 t/)
    expect(loaded.match(/mass: 25 t/g)).toHaveLength(2)
    expect(value(typedInto(loaded, stock, ''))).not.toContain('silo')
  })
  it('is refused with what to write when it does not read', () =>
    expect(typedInto(value(typedInto(job, stock, '6 t')), loads, 'next Monday').ok).toBe(false))
  it('may be a time of the day to another', () => {
    const hours: Field = { path: ['site', 'permittedHours'], label: '', kind: { kind: 'span' }, without: '' }
    const set = value(typedInto(job, hours, '7:00 to 20:00'))
    expect(set).toMatch(/permittedHours: .*from: 7:00,? *until: 20:00|from: 7:00\n *until: 20:00/)
    expect(fieldText(hours, { from: '7:00', until: '20:00' }, 'metric')).toBe('7:00 to 20:00')
  })
  it('may be a row of lengths, each as it was typed, so many and no other', () => {
    const origin: Field = {
      path: ['machine', 'origin'],
      label: '',
      kind: { kind: 'row', dimension: 'length', count: 3 },
    }
    expect(value(typedInto(job, origin, `1,5 m; 3' 4"; 0 m`))).toMatch(/1,5 m[\s\S]*3' 4"[\s\S]*0 m/)
    expect(fieldText(origin, ['1500 mm', '40 in', '0 m'], 'metric')).toBe('1.5 m; 1.016 m; 0 mm')
    const short = typedInto(job, origin, '1 m; 2 m')
    expect(short.ok ? '' : short.problems[0]?.say).toContain('3 lengths are needed')
  })
})

describe('a value reset', () => {
  it('is the default again, and no longer the job’s', () => {
    const after = value(resetField(job, height.path))
    expect(after).not.toContain('liftHeight')
    expect(standingOf({ rules: {} }, height.path)).toMatchObject({ given: false, value: '1 m' })
  })
  it('of a rule the job does not have is refused', () =>
    expect(resetField(job, ['rules', 'windMost']).ok).toBe(false))
})

describe('what a field shows', () => {
  it('is in the reader’s units, whatever stands in the job', () => {
    expect(fieldText(height, '90 cm', 'metric')).toBe('900 mm')
    expect(fieldText(height, '36 in', 'imperial')).toBe(`3' 0"`)
  })
  it('says hours as hours', () =>
    expect(fieldText({ ...height, kind: { kind: 'quantity', dimension: 'time' } }, '12 h', 'metric')).toBe(
      '12 h',
    ))
  it('says what takes seconds in seconds', () =>
    expect(fieldText({ ...height, kind: { kind: 'quantity', dimension: 'time' } }, '1.5 s', 'imperial')).toBe(
      '1.5 s',
    ))
  it('shows what cannot be read as it stands, to be mended', () =>
    expect(fieldText(height, 'about a metre', 'metric')).toBe('about a metre'))
  it('shows a safety factor plainly', () =>
    expect(fieldText({ ...height, kind: { kind: 'factor' } }, '150 %', 'metric')).toBe('1.5'))
})

describe('edits beside an old problem', () => {
  const broken = job.replace('39°', '390°')
  it('are taken', () =>
    expect(editedJob(broken, [{ kind: 'set', path: ['name'], value: 'Barn' }]).ok).toBe(true))
  it('are refused when they bring a new one', () =>
    expect(editedJob(broken, [{ kind: 'set', path: ['rules', 'liftHeight'], value: 'tall' }]).ok).toBe(false))
})
