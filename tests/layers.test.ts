import { describe, expect, it } from 'vitest'
import { importsOf, packageNames, sourcesOf } from './sources.js'

/** Which of our packages each may import; `docs/architecture.md` says why. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  core: [],
  document: ['core'],
  drawing: ['core'],
  formats: ['core', 'document', 'drawing'],
  server: ['core', 'document', 'drawing', 'formats'],
  cli: ['core', 'document', 'drawing', 'formats', 'server'],
  web: ['core', 'document', 'drawing', 'formats'],
}
const pure = new Set(['core', 'document', 'drawing'])
const ambient = /\b(process\.|Date\.now\(|Math\.random\(|performance\.now\(|console\.|Buffer\.)/

const isTest = (path: string) => /\.(test|bench)\.tsx?$/.test(path) || path.includes('/fixtures/')

describe('layers', () => {
  it('name every package', () => expect(Object.keys(mayImport).sort()).toEqual(packageNames))

  it.each(packageNames)('%s imports downwards only, and only what an index exports', name => {
    const strays = sourcesOf(name)
      .filter(file => !isTest(file.path))
      .flatMap(file =>
        importsOf(file).flatMap(target => {
          const ours = /^@dawnlift\/([^/]+)(\/[^/]+)?(\/.+)?$/.exec(target)
          if (ours && !mayImport[name]?.includes(ours[1]!))
            return [`${file.path} may not import ${target} — see docs/architecture.md`]
          if (ours?.[3]) return [`${file.path} imports past an index: ${target}`]
          if (pure.has(name) && target.startsWith('node:'))
            return [`${file.path} may not import ${target} — see docs/architecture.md`]
          return []
        }),
      )
    expect(strays).toEqual([])
  })

  it.each([...pure])('%s takes clock, chance and console as arguments, never from the machine', name => {
    const strays = sourcesOf(name)
      .filter(file => !isTest(file.path))
      .flatMap(file =>
        file.text
          .split('\n')
          .map((line, index) => ({
            code: line.replace(/'[^']*'|`[^`]*`|\/\/.*$|^\s*\/?\*.*$/g, ''),
            at: `${file.path}:${index + 1}`,
          }))
          .filter(({ code }) => ambient.test(code))
          .map(({ at, code }) => `${at} ${code.trim()}`),
      )
    expect(strays).toEqual([])
  })
})
