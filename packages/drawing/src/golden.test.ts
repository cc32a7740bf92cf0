import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { scenes } from './examples/index.js'
import { toSvg } from './paper/index.js'

const golden = (name: string) => fileURLToPath(new URL(`../../../golden/${name}.svg`, import.meta.url))

describe('drawings', () => {
  it.each(Object.keys(scenes))('%s is drawn as in golden/', name => {
    const drawn = toSvg(scenes[name]!())
    const aside = golden(`${name}-changed`)
    const known = existsSync(golden(name)) ? readFileSync(golden(name), 'utf8') : 'missing'
    if (drawn === known) rmSync(aside, { force: true })
    else writeFileSync(aside, drawn)
    expect(
      drawn === known,
      `look at golden/${name}-changed.svg and move it over golden/${name}.svg if it is right`,
    ).toBe(true)
  })
})
