import { existsSync, mkdtempSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { openFolderStore } from './folder-store.js'

const folderWith = (text: string) => {
  const folder = mkdtempSync(join(tmpdir(), 'dawnlift-store-'))
  writeFileSync(join(folder, 'job.yaml'), text)
  return folder
}
const storeWith = (text: string) => {
  const folder = folderWith(text)
  const store = openFolderStore(folder)
  if (!store.ok) throw new Error('a folder with a job opens')
  return { folder, store: store.value }
}

describe('folder store', () => {
  it('says what to do about a folder without a job', () => {
    const store = openFolderStore(mkdtempSync(join(tmpdir(), 'dawnlift-empty-')))
    expect(store.ok ? '' : store.problems[0]!.say).toMatch(/no job\.yaml.*dawnlift new/)
  })

  it('saves a text that rests on what stands there, and keeps the older one', () => {
    const { folder, store } = storeWith('name: before\n')
    const before = store.read()
    expect(store.save('name: after\n', before.revision).ok).toBe(true)
    expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toBe('name: after\n')
    const shelf = join(folder, '.dawnlift/revisions')
    expect(readdirSync(shelf).map(name => readFileSync(join(shelf, name), 'utf8'))).toEqual([
      'name: before\n',
    ])
  })

  it('refuses a text that rests on an older one, and leaves the file alone', () => {
    const { folder, store } = storeWith('name: before\n')
    const mine = store.read()
    writeFileSync(join(folder, 'job.yaml'), 'name: theirs\n')
    const saved = store.save('name: mine\n', mine.revision)
    expect(saved.ok ? '' : saved.problems[0]!.code).toBe('store/changed-elsewhere')
    expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toBe('name: theirs\n')
  })

  it('leaves no part-written file behind', () => {
    const { folder, store } = storeWith('name: before\n')
    store.save('name: after\n', undefined)
    store.addBeside('plan.dxf', new Uint8Array([1, 2, 3]))
    expect(readdirSync(folder).filter(name => name.endsWith('.part'))).toEqual([])
  })

  it.each(['../outside.dxf', 'sub/plan.dxf', '.hidden', 'job.yaml'])(
    'does not let a dropped file be called %s',
    name => expect(storeWith('x: 1\n').store.addBeside(name, new Uint8Array()).ok).toBe(false),
  )

  it('takes a file away and keeps it aside', () => {
    const { folder, store } = storeWith('x: 1\n')
    store.addBeside('plan.dxf', new Uint8Array([1, 2, 3]))
    expect([store.removeBeside('plan.dxf'), store.beside(), store.removeBeside('plan.dxf')]).toEqual([
      true,
      [],
      false,
    ])
    const [kept] = readdirSync(join(folder, '.dawnlift/removed'))
    expect([...readFileSync(join(folder, '.dawnlift/removed', kept!))]).toEqual([1, 2, 3])
  })

  it('never takes the job itself away, nor what lies elsewhere', () => {
    const { store } = storeWith('x: 1\n')
    expect(['job.yaml', '../job.yaml', '.dawnlift'].map(store.removeBeside)).toEqual([false, false, false])
  })

  it('does not follow a link that leaves the folder', () => {
    const { folder, store } = storeWith('x: 1\n')
    const outside = join(mkdtempSync(join(tmpdir(), 'dawnlift-outside-')), 'secret.txt')
    writeFileSync(outside, 'secret')
    symlinkSync(outside, join(folder, 'plan.dxf'))
    expect(existsSync(join(folder, 'plan.dxf'))).toBe(true)
    expect(store.readBeside('plan.dxf')).toBeUndefined()
  })
})
