import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { run } from '../packages/cli/src/collecting-screen.js'
import { root } from './sources.js'

const readme = readFileSync(join(root, 'README.md'), 'utf8')

const words = (text: string): string => text.replace(/\s+/g, ' ').trim()

/** The lifts of the README's table, each with the sentence that its column breaks into lines. */
function shownLifts(): readonly { readonly lift: string; readonly why: string }[] {
  const [, table] = /```\n(day {2}date.*?)```/s.exec(readme)!
  const [head, ...lines] = table!.trimEnd().split('\n')
  const column = head!.indexOf('why not more')
  const rows: { lift: string; why: string }[] = []
  for (const line of lines) {
    const lift = words(line.slice(0, column))
    if (lift) rows.push({ lift, why: line.slice(column) })
    else rows.at(-1)!.why += ` ${line.slice(column)}`
  }
  return rows.map(({ lift, why }) => ({ lift, why: words(why) }))
}

it('the print days of the README are those of the demo house', async () => {
  const { code, out } = await run(['plan', 'examples/torrenubia'], root)
  expect(code).toBe(0)
  const planned = out.split('\n').map(words)
  const lifts = shownLifts()
  expect(lifts.length).toBeGreaterThan(1)
  for (const { lift, why } of lifts)
    expect(planned.find(row => row.startsWith(lift))).toMatch(
      new RegExp(`^${escaped(lift)} .*${escaped(why)}$`),
    )
}, 120_000)

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')

it('the README shows every command there is, or points to the guide for it', async () => {
  const { out } = await run(['--help'], root)
  const known = [...out.matchAll(/^ {2}([a-z]+) (?:\[options\]|<)/gm)].map(match => match[1]!)
  expect(known.length).toBeGreaterThan(10)
  expect(
    known.filter(
      name => !readme.includes(`npm run dawnlift -- ${name}`) && !readme.includes(`\`dawnlift ${name}\``),
    ),
  ).toEqual([])
})
