import { parseQuantity } from '@dawnlift/core/quantity'
import { editJob, newJobText, parseJob, rawJob } from '@dawnlift/document/job'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Thing } from '../thing.js'
import { lengthText } from './length-text.js'
import { addEdits, changeEdits, removeEdits } from './part-edits.js'
import { embedEntry, openingEntry, wallEntry } from './part-entry.js'
import { bringBackEdits, leftOut, takeOutEdits } from './take-out.js'

const text = newJobText('Shed')
const raw = (from = text) => {
  const read = rawJob(from)
  if (!read.ok) throw new Error(read.problems[0]?.say)
  return read.value
}
const job = (from = text) => {
  const read = parseJob(from)
  if (!read.ok) throw new Error(read.problems.map(each => each.say).join('; '))
  return read.value.job
}
const edited = (edits: Parameters<typeof editJob>[1], from = text) => {
  const result = editJob(from, edits)
  if (!result.ok) throw new Error(result.problems[0]?.say)
  return result.value
}

describe('lengthText', () => {
  it('writes lengths as a drawing of the job’s country has them', () =>
    expect([
      lengthText(0.9, 'metric'),
      lengthText(2.46, 'metric'),
      lengthText(0.07, 'metric'),
      lengthText(8.125 * 0.3048, 'imperial'),
      lengthText(2.25 * 0.0254, 'imperial'),
    ]).toEqual(['900 mm', '2.46 m', '70 mm', `8' 1 1/2"`, '2 1/4"']))
  it('reads back to the same length within a nanometre’s rounding', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.constantFrom('metric' as const, 'imperial' as const),
        (value, units) => {
          const read = parseQuantity(lengthText(value, units), 'length')
          expect(read.ok && Math.abs(read.value - value)).toBeLessThan(1.01e-6)
        },
      ),
    ))
})

describe('changeEdits', () => {
  it('touches one line of the document for a part that stands in it', () => {
    const after = edited(changeEdits(raw(), 'openings', 'F1', { at: '9.5 m' }, () => ({})))
    const changed = after.split('\n').filter(line => !text.includes(line))
    expect(changed).toHaveLength(1)
    expect(changed[0]).toContain('F1, wall: W1, kind: window, at: 9.5 m, width: 1.2 m')
  })
  it('writes a drawn part out in full, so that it is the same but for the change', () => {
    const drawn = { ...job().openings[1]!, id: 'F9' }
    const bare = edited(removeEdits(raw(), 'openings', 'F1'))
    const changes = { at: '8 m', sill: '1 m', head: '2 m' }
    const edits = changeEdits(raw(bare), 'openings', 'F9', changes, () => openingEntry(drawn, 'metric'))
    const after = job(edited(edits, bare))
    expect(after.openings.find(each => each.id === 'F9')).toEqual({ ...drawn, at: 8, sill: 1, head: 2 })
  })
})

describe('entries of parts', () => {
  it('read back to the same opening, embed and wall in either unit system', () => {
    const before = job()
    for (const units of ['metric', 'imperial'] as const) {
      const bare = edited([
        ...removeEdits(raw(), 'embeds', 'E1'),
        { kind: 'remove', path: ['openings'] },
        { kind: 'remove', path: ['walls'] },
      ])
      const after = job(
        edited(
          [
            ...addEdits(raw(bare), 'walls', wallEntry(before.walls[0]!, units)),
            ...addEdits(raw(bare), 'openings', openingEntry(before.openings[1]!, units)),
            ...addEdits(raw(bare), 'embeds', embedEntry(before.embeds[0]!, units)),
          ],
          bare,
        ),
      )
      expect(after.walls[0]!.centreline.points.flat().map(each => Number(each.toFixed(5)))).toEqual(
        before.walls[0]!.centreline.points.flat(),
      )
      expect([after.walls[0]!.centreline.closed, after.walls[0]!.makeUp.kind]).toEqual([true, 'double'])
      expect(after.openings[0]!.at).toBeCloseTo(before.openings[1]!.at, 5)
      expect(after.embeds[0]!.width).toBeCloseTo(before.embeds[0]!.width, 5)
    }
  })
  it('keeps the head of a niche', () =>
    expect(embedEntry({ ...job().embeds[0]!, head: 'corbelled' }, 'metric').head).toBe('corbelled'))
})

describe('taking out', () => {
  const nothingDrawn: ReadonlySet<string> = new Set()
  const out = (from: string, thing: Thing, drawn = nothingDrawn) =>
    takeOutEdits(raw(from), job(text), thing, drawn)

  it('takes the list along with its last entry and leaves no trace in noCutAt', () => {
    const marked = edited([{ kind: 'set', path: ['noCutAt'], value: ['D1', 'F1'] }])
    const once = edited(out(marked, { kind: 'opening', id: 'D1' }), marked)
    const twice = edited(out(once, { kind: 'opening', id: 'F1' }), once)
    expect(raw(once).noCutAt).toEqual(['F1'])
    expect(Object.keys(raw(twice))).not.toContain('openings')
    expect(Object.keys(raw(twice))).not.toContain('noCutAt')
    expect(twice).toContain('# how results are shown: metric or imperial')
  })
  it('of a wall takes along what stands in it', () => {
    const bare = raw(edited(out(text, { kind: 'wall', id: 'W1' })))
    expect(['walls', 'openings', 'embeds'].filter(list => list in bare)).toEqual([])
  })
  it('of a drawn thing names it among those left out, behind those that are', () => {
    const drawing = { file: 'plan.dxf', leaveOut: ['F8'], layers: {} }
    const mapped = edited([{ kind: 'set', path: ['drawing'], value: drawing }])
    const after = raw(edited(out(mapped, { kind: 'opening', id: 'F1' }, new Set(['F1', 'W1'])), mapped))
    expect(leftOut(after)).toEqual(['F8', 'F1'])
    // A changed drawn window loses its change too: the job must not give what it leaves out.
    expect((after.openings as { id: string }[]).map(each => each.id)).toEqual(['D1'])
  })
  it('of a drawn wall names the wall alone: what is drawn in it goes with it', () => {
    const mapped = edited([{ kind: 'set', path: ['drawing'], value: { file: 'plan.dxf', layers: {} } }])
    const drawn = new Set(['W1', 'F1', 'D1', 'E1'])
    expect(leftOut(raw(edited(out(mapped, { kind: 'wall', id: 'W1' }, drawn), mapped)))).toEqual(['W1'])
  })
  it('is taken back by its name', () => {
    const drawing = { file: 'plan.dxf', leaveOut: ['F8', 'F1'], layers: {} }
    const mapped = edited([{ kind: 'set', path: ['drawing'], value: drawing }])
    const once = edited(bringBackEdits(raw(mapped), 'F8'), mapped)
    const twice = edited(bringBackEdits(raw(once), 'F1'), once)
    expect([leftOut(raw(once)), (raw(twice).drawing as object) && leftOut(raw(twice))]).toEqual([['F1'], []])
    expect(twice).not.toContain('leaveOut')
  })
  it('of a lintel leaves its opening, whatever its type says', () => {
    const after = job(edited(out(text, { kind: 'lintel', id: 'F1' })))
    const window = after.openings.find(each => each.id === 'F1')
    expect([window?.at, window?.lintel]).toEqual([
      job().openings.find(each => each.id === 'F1')?.at,
      undefined,
    ])
  })
  it('has no entry to remove where the part is drawn and unchanged', () =>
    expect(removeEdits(raw(), 'openings', 'F7')).toEqual([]))
})
