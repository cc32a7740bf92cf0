import { describe, expect, it } from 'vitest'
import type { Drawing, Mark } from './drawing.js'
import {
  boundsOf,
  clipped,
  darkPalette,
  dayText,
  fitTo,
  hatch,
  lengthText,
  line,
  paperPalette,
  text,
  textWidth,
  toSvg,
  wrapped,
} from './index.js'

const drawing = (marks: readonly Mark[]): Drawing => ({
  title: 'a < b & "c"',
  says: 'nothing',
  width: 100,
  height: 50,
  layers: [{ name: 'one', marks }],
})

describe('toSvg', () => {
  it('lets no text become markup', () => {
    const svg = toSvg(
      drawing([text([1, 1], '<script>&"\u0007', 'normal', 'start', { ref: '"><b>', title: '</g>' })]),
    )
    expect(svg).toContain('&lt;script&gt;&amp;&quot;')
    expect(svg).toContain('data-ref="&quot;&gt;&lt;b&gt;"')
    for (const raw of ['<script', '<b>', '\u0007']) expect(svg).not.toContain(raw)
    expect(svg.match(/<\/g>/g)).toHaveLength(1)
  })

  it('sets a line with Hebrew in the face that has it', () => {
    const svg = toSvg(drawing([text([1, 1], 'קיר מזרחי 4', 'normal'), text([1, 9], 'east', 'normal')]))
    expect(svg.match(/font-family="Libertinus Serif, serif"/g)).toHaveLength(1)
  })

  it('turns the y axis over and keeps two decimals', () =>
    expect(
      toSvg(
        drawing([
          line(
            [
              [1 / 3, 0],
              [10, 50.0001],
            ],
            'thin',
          ),
        ]),
      ),
    ).toContain('d="M0.33 50L10 0"'))

  it('turns a left bulge left', () => {
    // hand: a half circle from (0,0) to (10,0) turning left runs below the chord; on the sheet with y down that is sweep 0
    const svg = toSvg(
      drawing([
        line(
          [
            [0, 20],
            [10, 20],
          ],
          'thin',
          { bulges: [1] },
        ),
      ]),
    )
    expect(svg).toContain('M0 30A5 5 0 0 0 10 30')
  })

  it('takes the long way round for a bulge over a half circle', () =>
    expect(
      toSvg(
        drawing([
          line(
            [
              [0, 20],
              [10, 20],
            ],
            'thin',
            { bulges: [-2] },
          ),
        ]),
      ),
    ).toContain('A6.25 6.25 0 1 1 10 30'))

  it('names every colour for the screen and keeps the paper’s beside it', () => {
    const marks = [
      line(
        [
          [0, 0],
          [1, 1],
        ],
        'edge',
        { fill: 'section2' },
      ),
    ]
    expect(toSvg(drawing(marks), { theme: 'screen' })).toContain(
      `var(--draw-section2, ${paperPalette.section2})`,
    )
    expect(toSvg(drawing(marks))).not.toContain('var(')
  })
})

describe('palettes', () => {
  /** Relative luminance and contrast, published: WCAG 2.1, definitions (read directly). */
  const luminance = (hex: string): number => {
    const [r, g, b] = [1, 3, 5].map(from => {
      const c = Number.parseInt(hex.slice(from, from + 2), 16) / 255
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
    })
    return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!
  }
  const contrast = (a: string, b: string): number => {
    const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x)
    return (high! + 0.05) / (low! + 0.05)
  }
  const lightness = (hex: string): number => 116 * Math.cbrt(luminance(hex)) - 16
  const fills = ['paper', 'night', 'shut', 'open', 'lintel', 'cut', 'bead'] as const
  const sections = ['section0', 'section1', 'section2', 'section3', 'section4', 'section5'] as const

  it.each([
    // WCAG AAA on paper, read in the sun; AA on the dark screen.
    ['paper', paperPalette, 7],
    ['dark', darkPalette, 4.5],
  ] as const)('of %s let ink be read on every fill', (_, palette, least) => {
    for (const fill of [...fills, ...sections])
      expect(contrast(palette.ink, palette[fill])).toBeGreaterThan(least)
  })

  it.each([
    ['paper', paperPalette],
    ['dark', darkPalette],
  ] as const)('of %s keep sections apart in grey', (_, palette) => {
    const steps = sections.map(name => lightness(palette[name])).sort((a, b) => a - b)
    for (const [index, step] of steps.slice(1).entries()) expect(step - steps[index]!).toBeGreaterThan(3.5)
  })
})

describe('fitTo', () => {
  const room = { x: 10, y: 10, width: 180, height: 120 }
  it.each([
    // hand: 6 m on 180 mm asks for 1:33.3, the next standard scale is 1:50
    [6, 4, 'metric', '1:50'],
    [3.6, 1, 'metric', '1:20'],
    // hand: 1:33.3 again; 1/4 inch to the foot is 1:48
    [6, 4, 'imperial', '1/4" = 1\'-0"'],
  ] as const)('of %d × %d m, %s, takes %s', (x, y, units, scale) =>
    expect(fitTo({ x: [0, x], y: [0, y] }, room, units).scaleText).toBe(scale),
  )

  it('puts the middle in the middle, turned over or not', () => {
    const bounds = boundsOf([
      [2, 1],
      [8, 5],
    ])
    expect(fitTo(bounds, room, 'metric').toPaper([5, 3])).toEqual([100, 70])
    expect(fitTo(bounds, room, 'metric', { mirror: true }).toPaper([5, 3])).toEqual([100, 70])
  })

  it('turned over puts what lies right at the left', () => {
    const paper = fitTo({ x: [0, 4], y: [0, 1] }, room, 'metric', { mirror: true })
    expect(paper.toPaper([4, 0])[0]).toBeLessThan(paper.toPaper([0, 0])[0])
  })
})

describe('words', () => {
  it.each([
    [0.3, 'metric', '0.30 m'],
    [1.0375, 'metric', '1.038 m'],
    [15, 'metric', '15.00 m'],
    // hand: 0.3 m is 11.811 in, 11 13/16, to the nearest eighth 11 3/4
    [0.3, 'imperial', '11 3/4"'],
    [8 * 0.3048, 'imperial', '8\' 0"'],
  ] as const)('%d m is, %s, %s', (metres, units, words) => expect(lengthText(metres, units)).toBe(words))

  it('name the weekday of a date', () => expect(dayText('2026-07-14')).toBe('Tue 14 Jul'))

  it('fit the room they are broken to', () => {
    for (const part of wrapped('a wall with-a-very-long-name-that-goes-on and on', 20, 'normal'))
      expect(textWidth(part, 'normal')).toBeLessThanOrEqual(20)
    expect(textWidth(clipped('a wall with a long name', 20, 'normal'), 'normal')).toBeLessThanOrEqual(20)
  })
})

describe('hatch', () => {
  it('stays inside its rectangle', () => {
    for (const mark of hatch([10, 20], [30, 25], 2, 'hair'))
      if (mark.kind === 'line')
        for (const [x, y] of mark.points) {
          expect(x).toBeGreaterThanOrEqual(10)
          expect(x).toBeLessThanOrEqual(30)
          expect(y).toBeGreaterThanOrEqual(20)
          expect(y).toBeLessThanOrEqual(25)
        }
  })
})
