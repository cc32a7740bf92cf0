import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { parseSiteFile, siteFileJsonSchema } from './index.js'

const guide = readFileSync(fileURLToPath(new URL('../../../../docs/guide/site.md', import.meta.url)), 'utf8')
const example = /```yaml\n(.*?)```/s.exec(guide)![1]!

describe('site.yaml', () => {
  it('of the guide names buildings, their jobs and the move', () => {
    const site = parseSiteFile(example)
    expect(site).toEqual({
      ok: true,
      value: {
        name: 'Finch Lane',
        buildings: [
          { name: 'gatehouse', job: 'gatehouse' },
          { name: 'workshop', job: 'workshop' },
        ],
        move: 2700,
      },
    })
  })
  it('tells all its problems at once, each with its line', () => {
    const site = parseSiteFile(
      'dawnliftSite: 2\nname: Lane\nbuildings:\n  - { name: a, job: ../a }\n  - { name: b, jab: b }\nmove: 45\ncrew: 3\n',
    )
    if (site.ok) throw new Error('read')
    expect(site.problems.map(each => each.at.split(' ')[0]).sort()).toEqual(
      [
        'site.yaml:1:15',
        'site.yaml:4:21',
        'site.yaml:5:5',
        'site.yaml:5:16',
        'site.yaml:6:7',
        'site.yaml:7:1',
      ].sort(),
    )
    expect(site.problems.map(each => each.say).join('\n')).toContain('the bare number 45 has no unit')
  })
  it('wants two buildings at least, each with a name and a job of its own', () => {
    const of = (...buildings: string[]) =>
      parseSiteFile(`dawnliftSite: 1\nname: x\nmove: 1 h\nbuildings: [${buildings.join(', ')}]`)
    expect(of('{ name: a, job: a }').ok).toBe(false)
    const twice = of('{ name: a, job: a }', '{ name: a, job: a }')
    expect(twice.ok ? [] : twice.problems.map(each => each.code)).toEqual(['site/twice', 'site/twice'])
  })
  it('has a schema for editors', () =>
    expect(Object.keys(siteFileJsonSchema().properties ?? {})).toEqual([
      'dawnliftSite',
      'name',
      'buildings',
      'move',
    ]))
})
