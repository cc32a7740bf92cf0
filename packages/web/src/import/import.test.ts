import { readFileSync } from 'node:fs'
import { editJob, newJobText, parseJob, rawJob, readJobFiles } from '@dawnlift/document/job'
import { drawingWalls, readDrawing } from '@dawnlift/formats/dxf'
import { describe, expect, it } from 'vitest'
import { blockTypes, layerCensus, likelyUse } from './layer-census.js'
import { locatedProblems } from './located-problems.js'
import {
  type ImportChoice,
  mappingEdits,
  originFor,
  ownParts,
  standsAlone,
  typeName,
} from './mapping-edits.js'
import { placedProblems } from './problem-places.js'
import { proposedChoice, proposedChoices } from './proposed-choice.js'
import { likeliestUnit, sheetSize, sizeFromProblems, sizeIn } from './unit-sizes.js'

const content = readFileSync(new URL('../../../../examples/tern-cottage/plan.dxf', import.meta.url))
const read = readDrawing(content, { unit: 'in', name: 'plan.dxf' })
if (!read.ok) throw new Error(read.problems[0]?.say)
const drawing = read.value
const text = newJobText('Cottage')
const raw = rawJob(text)
if (!raw.ok) throw new Error(raw.problems[0]?.say)

const choice: ImportChoice = {
  file: 'plan.dxf',
  unit: 'in',
  clear: true,
  layers: {
    'WALLS OUT': { is: 'walls', fresh: { makeUp: 'double', thickness: '10 in', height: `8'` } },
    'WALLS IN': { is: 'walls', type: 'outer' },
    'WALL NAMES': { is: 'names' },
    EMBEDS: { is: 'ignore' },
    NOTES: { is: 'ignore' },
  },
}

describe('the layers of a drawing', () => {
  const rows = layerCensus(drawing)
  it('are counted without the pictures inside blocks', () =>
    expect(rows.map(each => each.layer)).toEqual(['EMBEDS', 'NOTES', 'WALL NAMES', 'WALLS IN', 'WALLS OUT']))
  it('have a likely use by their names and what lies on them', () =>
    expect(rows.map(likelyUse)).toEqual(['embeds', 'ignore', 'names', 'walls', 'walls']))
  it('are left out at first when their blocks are of types the job does not have', () =>
    expect(rows.map(row => proposedChoice(row, drawing, raw.value).is)).toEqual([
      'ignore',
      'ignore',
      'names',
      'walls',
      'walls',
    ]))
  it('are mapped as before when the job has mapped them', () => {
    const mapped = { ...raw.value, drawing: { layers: { EMBEDS: { is: 'embeds', type: 'outlet' } } } }
    expect(proposedChoice(rows[0]!, drawing, mapped)).toEqual({ is: 'embeds', type: 'outlet' })
  })
  it('are walls, the fullest of them, when no name tells of walls', () => {
    const plain = [
      { layer: '0', lines: 4, texts: 0, blocks: 0 },
      { layer: '7', lines: 9, texts: 0, blocks: 0 },
    ]
    expect(proposedChoices(plain, drawing, raw.value)).toEqual({
      0: { is: 'ignore' },
      7: { is: 'walls', type: 'outer' },
    })
  })
  it('know the types their blocks name', () => expect(blockTypes(drawing, 'EMBEDS')).toContain('outlet'))
})

describe('the unit of a drawing', () => {
  it('is the one that makes it a house', () => expect(likeliestUnit(sheetSize(drawing))).toBe('in'))
  it('shows the size it would give', () => {
    expect(sizeIn('in', { width: 100, height: 10 }).width).toBeCloseTo(2.54, 9)
    expect(sizeIn('ft', { width: 100, height: 10 }).height).toBeCloseTo(3.048, 9)
  })
  it('is asked for with the size when the reader could not tell', () => {
    const mute = readDrawing(
      content.toString().replace(/\$INSUNITS\r?\n\s*70\r?\n\s*\d+/, '$INSUNITS\n 70\n 6'),
    )
    expect(mute.ok ? undefined : sizeFromProblems(mute.problems)?.width).toBeCloseTo(
      sheetSize(drawing).width,
      6,
    )
  })
})

describe('mappingEdits', () => {
  const after = editJob(text, mappingEdits(raw.value, choice))
  const document = after.ok ? after.value : ''
  it('put the drawing into the document and take out what stood there', () => {
    const files = readJobFiles(document)
    if (!files.ok || !files.value.drawing) throw new Error('the document names its drawing')
    const walls = drawingWalls(drawing, files.value.drawing)
    const job = parseJob(document, walls.ok ? { drawing: walls.value } : {})
    expect(job.ok ? [] : job.problems.map(each => each.say)).toEqual([])
    expect(job.ok && job.value.job.walls.map(each => each.id).sort()).toEqual([
      'A',
      'B',
      'E',
      'N',
      'P',
      'S',
      'W',
    ])
    expect(job.ok && job.value.job.walls.find(each => each.id === 'S')?.thickness).toBeCloseTo(0.254, 9)
    expect(job.ok && job.value.job.openings).toEqual([])
  })
  it('leave every other line as it was', () => {
    const kept = new Set(document.split('\n'))
    const lost = text.split('\n').filter(line => !kept.has(line))
    // Only the room’s own wall, openings and embed, with the comment inside the wall.
    expect(
      lost.every(line => /^(walls|openings|embeds):|^\s+(-|name:|type:|path:|# closed)/.test(line)),
    ).toBe(true)
  })
  it('tell beforehand what will go', () =>
    expect(ownParts(raw.value)).toEqual([
      ['walls', 1],
      ['openings', 2],
      ['embeds', 1],
    ]))
  it('ask to take out only walls that no drawing gave', () => {
    expect(standsAlone(raw.value)).toBe(true)
    expect(standsAlone({ ...raw.value, drawing: { file: 'plan.dxf' } })).toBe(false)
  })
  it('change only what differs of a drawing the job has, and leave its comments and the rest of its ways', () => {
    const home = readFileSync(new URL('../../../../examples/tern-cottage/job.yaml', import.meta.url), 'utf8')
    const own = rawJob(home)
    if (!own.ok) throw new Error(own.problems[0]?.say)
    const rows = layerCensus(drawing)
    const same = { ...choice, clear: false, layers: proposedChoices(rows, drawing, own.value) }
    expect(mappingEdits(own.value, same)).toEqual([])
    const layers = { ...same.layers, EMBEDS: { is: 'ignore' as const } }
    const other = editJob(home, mappingEdits(own.value, { ...same, file: 'b.dxf', layers }))
    const lines = home.split('\n')
    expect(other.ok && other.value.split('\n').filter(line => !lines.includes(line))).toEqual([
      '  file: b.dxf',
      '    EMBEDS: { is: ignore } # each block says its type and its height',
    ])
  })
  it('drop the origin of a drawing that is replaced', () => {
    const old = {
      ...raw.value,
      drawing: { file: 'plan.dxf', unit: 'in', origin: ['1 m', '2 m'], layers: { GONE: { is: 'walls' } } },
    }
    const removed = (file: string) =>
      mappingEdits(old, { ...choice, clear: false, file })
        .filter(edit => edit.kind === 'remove')
        .map(edit => edit.path.join(' '))
    expect(removed('plan.dxf')).toEqual(['drawing layers GONE'])
    expect(removed('b.dxf')).toEqual(['drawing origin', 'drawing layers GONE'])
  })
  it('replace a drawing by another', () => {
    const again = rawJob(document)
    const second = again.ok
      ? editJob(document, mappingEdits(again.value, { ...choice, file: 'b.dxf' }))
      : again
    const found = second.ok ? rawJob(second.value) : second
    expect(found.ok && (found.value.drawing as { file: string }).file).toBe('b.dxf')
  })
})

describe('names and places', () => {
  it('make a type’s name from a layer’s', () =>
    expect([typeName('WALLS OUT'), typeName('A-Wände $0$')]).toEqual(['walls-out', 'a-wände-0']))
  it('bring home a drawing laid out at map coordinates only', () => {
    expect(originFor([431_000, 4_200_000], [431_012, 4_200_008])).toEqual([431_000, 4_200_000])
    expect(originFor([-2, -1], [10, 8])).toBeUndefined()
  })
  it('pin a problem where it says it is', () => {
    const [first, second] = placedProblems([
      { code: 'dxf/off-wall', at: '(12.340, -5.000) m', say: 'x' },
      { code: 'dxf/no-walls', at: 'plan.dxf', say: 'y' },
    ])
    expect([first?.point, second?.point]).toEqual([[12.34, -5], undefined])
  })
})

describe('problems of parts', () => {
  const job = parseJob(text)
  if (!job.ok) throw new Error(job.problems[0]?.say)
  const at = (place: string) => locatedProblems([{ code: 'x', at: place, say: '' }], job.value.job)[0]?.at
  it('are located at the middle of the part they name', () => {
    // hand: the window F1 stands 10.8 m along the room’s wall of 4.8 by 3.6 m, 2.4 m into its third side.
    expect(at('openings[1].head')).toBe('openings[1].head (2.400, 3.600) m')
    expect(at('walls[0]')).toBe('walls[0] (4.800, 3.600) m')
  })
  it('stay as they are when they name no part', () =>
    expect([at('drawing.file'), at('walls[7]')]).toEqual(['drawing.file', 'walls[7]']))
})
