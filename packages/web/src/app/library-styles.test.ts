import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'

const source = fileURLToPath(new URL('..', import.meta.url))
const files = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter(name => /\.tsx?$/.test(name))
const styles = readFileSync(join(source, 'app/library-styles.ts'), 'utf8')

/** Parts drawn with the styles of others, or with none. */
const drawnBy: Readonly<Record<string, string | undefined>> = {
  TextInput: 'Input',
  Textarea: 'Input',
  NativeSelect: 'Input',
  FileButton: undefined,
  MantineProvider: undefined,
}

it('every part of the component library that the app uses has its styles', () => {
  const used = files.flatMap(name => {
    const text = readFileSync(join(source, name), 'utf8')
    const lists = [...text.matchAll(/import \{([^}]+)\} from '@mantine\/core'/g)].map(([, list]) => list!)
    return lists.flatMap(list => list.split(',').map(each => each.trim())).filter(each => /^[A-Z]/.test(each))
  })
  const missing = [...new Set(used)]
    .map(name => (name in drawnBy ? drawnBy[name] : name))
    .filter(name => name && !styles.includes(`styles/${name}.css`))
  expect(used.length).toBeGreaterThan(20)
  expect(missing).toEqual([])
})
