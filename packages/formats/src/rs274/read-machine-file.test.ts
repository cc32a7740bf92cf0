import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { noRealInputs, realFolder } from '../../../../tests/sources.js'
import { type FeedMove, inspectRun, type MachineRun, readMachineFile } from './index.js'

/** Lines between a usual opening and M2. */
const program = (...lines: string[]) => ['G21 G90 G17 G94', 'G0 X0 Y0 Z0 C0', ...lines, 'M2'].join('\n')

function read(text: string): MachineRun {
  const result = readMachineFile(text)
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}
const codes = (text: string): string[] => {
  const result = readMachineFile(text)
  return result.ok ? [] : result.problems.map(problem => `${problem.code}@${problem.at.split(':').at(-1)}`)
}
const lastMove = (text: string): FeedMove => {
  const moves = read(text).steps.filter(
    (step): step is FeedMove => step.kind === 'line' || step.kind === 'arc',
  )
  return moves.at(-1)!
}

describe('words and lines, as NISTIR 6556 writes them', () => {
  it('ignores blanks in words and the case of letters', () => {
    // published (NISTIR6556, 3.3.1): "g0x +0. 12 34y 7" is "g0 x+0.1234 y7"
    const { steps } = read(program('g0x +0. 12 34y 7'))
    expect(steps.at(-1)).toMatchObject({
      to: { x: expect.closeTo(0.0001234, 12), y: expect.closeTo(0.007, 12) },
    })
  })
  it('turns about (10, 11) with radius 5 in its example of an arc', () => {
    // published (NISTIR6556, 3.5.3.2): at X7 Y7, "G17 G2 x10 y16 i3 j4 z9"; the standard's own tolerance admits the radii 5 and 5
    const arc = lastMove(program('G0 X7 Y7', 'G17 G2 x10 y16 i3 j4 z9 F60'))
    // hand: from (−3, −4) to (0, 5) clockwise about the centre: 90° + atan(3/4)… = 143.130°; helix rises 9 mm
    const sweep = (143.13010235415598 * Math.PI) / 180
    expect(arc.sweep).toBeCloseTo(-sweep, 9)
    expect(arc.length).toBeCloseTo(Math.hypot(5 * sweep, 9) / 1000, 9)
    expect(arc.box[0]).toBeCloseTo(0.005, 9)
  })
  it('takes inches, steps and inverse time', () => {
    expect(lastMove(program('G20', 'G1 X1 F60')).to.x).toBeCloseTo(0.0254, 12)
    expect(lastMove(program('G91', 'G1 X5 F60', 'X5')).to.x).toBeCloseTo(0.01, 12)
    // G93: F 2 is half a minute whatever the way
    expect(lastMove(program('G93', 'G1 X5 F2')).time).toBeCloseTo(30, 9)
  })
  it('counts F as length per minute along the way and as degrees per minute for the heading alone', () => {
    expect(lastMove(program('G1 X300 C90 F600')).time).toBeCloseTo(30, 9)
    expect(lastMove(program('G1 C90 F5400')).time).toBeCloseTo(1, 9)
  })
  it('reads full circles, arcs by radius and arcs in other planes', () => {
    const circle = lastMove(program('G3 X0 Y0 I10 F60'))
    expect(circle.length).toBeCloseTo((2 * Math.PI * 10) / 1000, 12)
    expect(circle.box.slice(0, 4)).toEqual([0, 0.02, -0.01, 0.01].map(value => expect.closeTo(value, 12)))
    // closed form: chord 10, R 10: 60° the short way, 300° the long way
    expect(lastMove(program('G2 X10 Y0 R10 F60')).sweep).toBeCloseTo(-Math.PI / 3, 9)
    expect(lastMove(program('G2 X10 Y0 R-10 F60')).sweep).toBeCloseTo((-5 * Math.PI) / 3, 9)
    expect(lastMove(program('G18 G2 X10 Z0 I5 F60')).length).toBeCloseTo((Math.PI * 5) / 1000, 12)
    expect(lastMove(program('G19 G3 Y10 Z0 J5 F60')).length).toBeCloseTo((Math.PI * 5) / 1000, 12)
  })
  it('switches the pump before the move of the same line and stops after it', () => {
    // published (NISTIR6556, table 8)
    expect(lastMove(program('S10 M3 G1 X10 F60')).pump).toBe(true)
    expect(lastMove(program('M3', 'M5 G1 X10 F60')).pump).toBe(false)
    expect(read(program('M0 G0 X5')).steps.map(step => step.kind)).toEqual(['rapid', 'rapid', 'stop'])
  })
  it('moves the zero by G92, by work systems and not under G53', () => {
    const at = (text: string) => lastMove(text).to.x
    expect(at(program('G0 X10', 'G92 X0', 'G1 X5 F60'))).toBeCloseTo(0.015, 12)
    expect(at(program('G0 X10', 'G92 X0', 'G92.1', 'G1 X5 F60'))).toBeCloseTo(0.005, 12)
    expect(at(program('G10 L2 P2 X100', 'G55', 'G1 X5 F60'))).toBeCloseTo(0.105, 12)
    expect(at(program('G10 L2 P2 X100', 'G55', 'G53 G1 X5 F60'))).toBeCloseTo(0.005, 12)
  })
  it('reads nothing after the end, and between two % only', () => {
    expect(read(`${program('G1 X1 F60')}\nthis is no line`).steps.length).toBe(2)
    expect(read('%\nG21\nG0 X1\n%\nnot read').steps.length).toBe(1)
  })
  it('keeps comments, the last of a line, and messages at a stop', () => {
    const run = read(program('(first) G0 X1 (second)', '(MSG, set the lintel)', 'M0'))
    expect(run.comments.map(comment => comment.text)).toEqual(['second', 'MSG, set the lintel'])
    expect(inspectRun(run).stops).toEqual([{ line: 5, message: 'set the lintel' }])
  })
  it('leaves out lines with / only when told', () => {
    const text = program('/G1 X5 F60')
    expect(read(text).steps.length).toBe(2)
    const skipped = readMachineFile(text, { skipDeletable: true })
    expect(skipped.ok && skipped.value.steps.length).toBe(1)
  })
  it('notes a pump that runs on a rapid move and a home it cannot know', () => {
    expect(read(program('S1 M3', 'G0 X5', 'M5', 'G28')).notes.map(note => note.line)).toEqual([4, 6])
  })
})

describe('problems, each with its line', () => {
  it.each([
    ['a word RS-274 does not have', 'G1 X1 E5 F60', 'rs274/letter'],
    ['an unknown G word', 'G5 X1', 'rs274/unknown-word'],
    ['an unknown M word', 'M98', 'rs274/unknown-word'],
    ['two words of one group', 'G0 G1 X5 F60', 'rs274/same-group'],
    ['two M words of one group', 'M3 M5', 'rs274/same-group'],
    ['a letter twice', 'G1 X1 X2 F60', 'rs274/repeated'],
    ['five M words', 'M3 M6 M7 M48 M0', 'rs274/too-many-m'],
    ['a move without an axis', 'G1 F60', 'rs274/no-axis'],
    ['a move without feed', 'G1 X5', 'rs274/no-feed'],
    ['a feed of zero', 'G1 X5 F0', 'rs274/no-feed'],
    ['a negative feed', 'G1 X5 F-1', 'rs274/negative'],
    ['a negative pump setting', 'S-5 M3', 'rs274/negative'],
    ['a negative wait', 'G4 P-1', 'rs274/dwell'],
    ['a wait without time', 'G4', 'rs274/dwell'],
    ['an arc without a centre', 'G2 X5 F60', 'rs274/arc'],
    ['an arc without an end', 'G2 I5 F60', 'rs274/no-axis'],
    ['a centre without an arc', 'I5 J5', 'rs274/no-axis'],
    ['an arc whose radii differ by more than 0.002 mm', 'G3 X10.003 Y10 J10 F60', 'rs274/arc'],
    ['an arc by radius that cannot reach', 'G2 X100 Y0 R10 F60', 'rs274/arc'],
    ['an arc by radius that ends where it starts', 'G2 X0 Y0 R10 F60', 'rs274/arc'],
    ['axis words after G80', 'G80 X5', 'rs274/no-motion'],
    ['two words that want the same axes', 'G1 G92 X5 F60', 'rs274/two-uses'],
    ['cutter compensation', 'G41 D1', 'rs274/not-followed'],
    ['a drilling cycle', 'G81 X1 Y1 Z1 R2', 'rs274/not-followed'],
    ['a parameter', 'G1 X#5 F60', 'rs274/parameter'],
    ['a parameter setting', '#5=3', 'rs274/parameter'],
    ['an expression', 'G1 X[1+2] F60', 'rs274/parameter'],
    ['a letter without a number', 'G1 X F60', 'rs274/number'],
    ['two decimal points', 'G1 X1.2.3 F60', 'rs274/character'],
    ['an exponent', 'G1 X1e300 F60', 'rs274/letter'],
    ['not a number', 'G1 XNaN F60', 'rs274/number'],
    ['a number of 300 digits', `G1 X${'9'.repeat(240)} F60`, 'rs274/number'],
    ['an open comment', '(not closed', 'rs274/comment'],
    ['a comment in a comment', '(a (b) c)', 'rs274/comment'],
    ['a stray bracket', 'G0 X5 )', 'rs274/comment'],
    ['a comment by semicolon', 'G0 X5 ; there', 'rs274/character'],
    ['a line over 256 characters', `G0 X5 (${'x'.repeat(260)})`, 'rs274/line-too-long'],
    ['a line number of six digits', 'N123456 G0 X5', 'rs274/line-number'],
    ['a line number behind other words', 'G0 X5 N7', 'rs274/line-number'],
    ['two line numbers', 'N1 N2 G0 X5', 'rs274/line-number'],
    ['G53 on an arc', 'G53 G2 X5 I5 F60', 'rs274/g53'],
    ['inverse time without F', 'G93 G1 X5', 'rs274/no-feed'],
    ['a strange G10', 'G10 L20 P1 X0', 'rs274/g10'],
  ])('%s', (_, line, code) => expect(codes(program(line))).toContain(`${code}@3`))

  it('are all told, not only the first', () =>
    expect(codes(program('G5', 'G1 X1 F60', 'E5', '(open'))).toEqual([
      'rs274/unknown-word@3',
      'rs274/letter@5',
      'rs274/comment@6',
    ]))
  it('name a file that is cut off', () => {
    expect(codes('G21\nG0 X1')).toEqual(['rs274/no-end@2'])
    expect(codes('%\nG21\nG0 X1')).toEqual(['rs274/no-end@3'])
    expect(codes('')).toEqual(['rs274/no-end@1'])
  })
  it('tell the difference of radii within and beyond the tolerance of the standard', () => {
    expect(codes(program('G3 X10.0019 Y10 J10 F60'))).toEqual([])
    const result = readMachineFile(program('G3 X10.0021 Y10 J10 F60'))
    expect(!result.ok && result.problems[0]!.say).toContain('10.0000 mm from its centre and ends 10.0021 mm')
  })
  it('speak the units of the file', () => {
    const result = readMachineFile(program('G20', 'G3 X1.001 Y1 J1 F60'))
    expect(!result.ok && result.problems[0]!.say).toMatch(
      /\d\.\d{4} in from its centre .* differ by 0\.0002 in\./,
    )
  })
  it('end after two hundred on something that is no machine file', () => {
    const found = codes(Array.from({ length: 5000 }, () => 'hello world').join('\n'))
    expect(found.length).toBe(201)
    expect(found.at(-1)).toContain('rs274/more')
  })
})

describe('the sample of the outside interpreter', () => {
  const folder = realFolder('machine')
  const absent = !existsSync(join(folder, 'sample.ngc'))
  it.skipIf(absent)(
    `ends every move where the interpreter does${absent ? ` (skipped: ${noRealInputs})` : ''}`,
    () => {
      const run = read(readFileSync(join(folder, 'sample.ngc'), 'utf8'))
      const canonical = readFileSync(join(folder, 'sample.canonical.txt'), 'utf8')
      // independent: canonical calls, four decimals of a millimetre and a degree
      const feeds = [...canonical.matchAll(/STRAIGHT_FEED\(([^)]*)\)|ARC_FEED\(([^)]*)\)/g)].map(match => {
        const n = (match[1] ?? match[2]!).split(',').map(Number)
        return match[1] ? [n[0]!, n[1]!, n[2]!, n[5]!] : [n[0]!, n[1]!, n[5]!, n[8]!]
      })
      const ours = run.steps
        .filter((step): step is FeedMove => step.kind === 'line' || step.kind === 'arc')
        .map(step => [
          step.to.x! * 1000,
          step.to.y! * 1000,
          step.to.z! * 1000,
          (step.heading! * 180) / Math.PI,
        ])
      expect(ours).toEqual(feeds.map(each => each.map(value => expect.closeTo(value, 4))))
      // hand: 1000 + π·150 + 1000 mm, at 9000 mm/min
      expect(inspectRun(run).length).toBeCloseTo((2000 + Math.PI * 150) / 1000, 9)
    },
  )
})
