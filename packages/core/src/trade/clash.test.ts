import { describe, expect, it } from 'vitest'
import type { Column, Embed, Opening, Wall } from '../job/index.js'
import { checkClashes } from './clash.js'
import { exampleDoor, exampleEmbed, exampleJob, exampleWall } from './trade-example.js'

const found = (parts: {
  embeds?: readonly Embed[]
  openings?: readonly Opening[]
  columns?: readonly Column[]
  walls?: readonly Wall[]
}) => checkClashes(exampleJob(parts)).map(finding => `${finding.check} ${finding.at} ${finding.verdict}`)

const column = { id: 'K', wall: 'W', at: 2, length: 0.4, thickness: 0.3, cover: 0.03 }

describe('checkClashes', () => {
  it('passes boxes in the open cavity', () => expect(found({ embeds: [exampleEmbed('X')] })).toEqual([]))

  it('finds two embeds on one face that overlap, and lets them pass on two', () => {
    const other = exampleEmbed('Y', { at: 2.05 })
    expect(found({ embeds: [exampleEmbed('X'), other] })).toEqual(['clash X Y fail'])
    expect(found({ embeds: [exampleEmbed('X'), { ...other, face: 'right' }] })).toEqual([])
  })

  it('says by how much they overlap', () => {
    const [finding] = checkClashes(
      exampleJob({ embeds: [exampleEmbed('X'), exampleEmbed('Y', { at: 2.07, bottom: 0.36 })] }),
    )
    expect(finding?.say).toContain('30 mm along, 40 mm up and 60 mm of its thickness')
    expect(finding?.demand).toBeCloseTo(0.03, 9)
  })

  it('lets a box meet its chase', () => {
    const chase = exampleEmbed('C', { kind: 'chase', bottom: 0, height: 1 })
    expect(found({ embeds: [exampleEmbed('X'), chase] })).toEqual([])
  })

  it('finds what sticks out of the wall', () => {
    expect(found({ embeds: [exampleEmbed('X', { kind: 'niche', at: 0.02 })] })).toContain(
      'inside-wall X fail',
    )
    expect(found({ embeds: [exampleEmbed('X', { kind: 'niche', depth: 0.4 })] })).toContain(
      'inside-wall X fail',
    )
    expect(found({ embeds: [exampleEmbed('X', { kind: 'niche', bottom: 2.35 })] })).toContain(
      'inside-wall X fail',
    )
  })

  it('finds an embed in a column, unless the structure put it there', () => {
    expect(found({ embeds: [exampleEmbed('X', { kind: 'niche' })], columns: [column] })).toEqual([
      'clash X K fail',
    ])
    expect(
      found({ embeds: [exampleEmbed('X', { kind: 'anchor', trade: 'structure' })], columns: [column] }),
    ).toEqual([])
  })

  it('keeps two beads between an embed and a jamb', () => {
    const niche = (at: number) => exampleEmbed('X', { kind: 'niche', at })
    // hand: the jamb stands at 2.5; a niche of 0.1 at 2.4 leaves 0.05 of the 0.1 asked, at 2.35 it leaves 0.1
    expect(found({ embeds: [niche(2.4)], openings: [exampleDoor('D')] })).toEqual(['edge-distance X warn'])
    expect(found({ embeds: [niche(2.35)], openings: [exampleDoor('D')] })).toEqual([])
  })

  it('keeps two beads from the corner of its own face', () => {
    const walls = [
      exampleWall('W', [
        [0, 0],
        [6, 0],
      ]),
      exampleWall('E', [
        [6, 0],
        [6, 4],
      ]),
    ]
    const niche = (face: 'left' | 'right') => exampleEmbed('X', { kind: 'niche', at: 5.75, face })
    // hand: the inside corner lies at 5.85, 0.05 from the niche's edge at 5.8; the outside one at 6.15
    expect(found({ embeds: [niche('left')], walls })).toEqual(['edge-distance X warn'])
    expect(found({ embeds: [niche('right')], walls })).toEqual([])
  })

  describe('of a box', () => {
    // Under a window and over a door-high opening: nothing goes up, nothing goes down.
    const window = exampleDoor('F', { at: 2, sill: 1, head: 2 })
    const hatch = exampleDoor('H', { at: 2, sill: 0, head: 0.2, lintel: undefined } as unknown as Opening)
    it('reached from below passes', () =>
      expect(found({ embeds: [exampleEmbed('X')], openings: [window] })).toEqual([]))
    it('shut in above and below fails', () =>
      expect(found({ embeds: [exampleEmbed('X')], openings: [window, hatch] })).toContain('box-reach X fail'))
    it('shut in but with a chase beside it passes', () => {
      const chase = exampleEmbed('C', { kind: 'chase', at: 2.09, bottom: 0.25, width: 0.08, height: 0.7 })
      expect(found({ embeds: [exampleEmbed('X'), chase], openings: [window, hatch] })).toEqual([])
    })
    it('in a wall without a cavity fails without a chase', () => {
      const walls = [
        exampleWall(
          'W',
          [
            [0, 0],
            [6, 0],
          ],
          { makeUp: { kind: 'solid' } },
        ),
      ]
      expect(found({ embeds: [exampleEmbed('X')], walls })).toEqual(['box-reach X fail'])
    })
  })

  describe('of a lintel bearing', () => {
    it('beyond the wall fails', () =>
      expect(found({ openings: [exampleDoor('D', { at: 0.6 })] })).toContain('lintel-bearing D fail'))
    it('under 100 mm fails', () =>
      // published: bearing at least 4 in (TMS 402; IRC R606.10), from memory
      expect(
        found({ openings: [exampleDoor('D', { lintel: { height: 0.2, bearing: 0.09, kind: 'steel' } })] }),
      ).toEqual(['lintel-bearing D fail', 'lintel-bearing D fail']))
    it('with an embed in it clashes', () =>
      expect(
        found({
          embeds: [exampleEmbed('X', { kind: 'niche', at: 2.4, bottom: 2.05 })],
          openings: [exampleDoor('D')],
        }),
      ).toContain('clash X D fail'))
    it('with a niche right below it is warned of', () =>
      expect(
        found({
          embeds: [exampleEmbed('X', { kind: 'niche', at: 2.35, bottom: 1.85 })],
          openings: [exampleDoor('D')],
        }),
      ).toEqual(['lintel-bearing D X warn']))
    it('defers to an engineer', () => {
      const [finding] = checkClashes(exampleJob({ openings: [exampleDoor('D', { at: 0.6 })] }))
      expect(finding?.say).toContain('licensed engineer')
    })
  })
})
