import { createHash, randomBytes } from 'node:crypto'
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { basename, join, relative, sep } from 'node:path'
import { failure, type Result, success } from '@dawnlift/core/result'
import { addedLines, isLogLine, logFile } from '@dawnlift/formats/site-log'

/** The job's document as it stands on disk, with a name for exactly this text. */
export interface StoredDocument {
  readonly text: string
  readonly revision: string
}

export interface FolderStore {
  readonly folder: string
  /** Names this job by its place on disk. */
  readonly id: string
  readonly read: () => StoredDocument
  /** Writes a newer text, if what it rests on is still what stands on disk. */
  readonly save: (text: string, restsOn: string | undefined) => Result<StoredDocument>
  /** Changes whenever the document or a file beside it does. */
  readonly stamp: () => string
  /** Names of the files beside the document. */
  readonly beside: () => readonly string[]
  readonly readBeside: (name: string) => Uint8Array | undefined
  /** Adds lines to the end of the site log, those it has already left out. Answers with the whole log. */
  readonly addToLog: (lines: readonly string[]) => Result<string>
  readonly addBeside: (name: string, content: Uint8Array) => Result<void>
  /** Takes a file from beside the job; it stays among the kept ones. False where there is none. */
  readonly removeBeside: (name: string) => boolean
}

const documentName = 'job.yaml'
/** Room for large drawings, not for a disk image dropped by mistake. */
const largestFile = 100 * 1024 * 1024

export const revisionOf = (text: string): string =>
  createHash('sha256').update(text).digest('hex').slice(0, 16)

/** A job kept as a folder: `job.yaml`, its drawing and weather beside it, older texts under `.dawnlift/revisions`. */
export function openFolderStore(folder: string): Result<FolderStore> {
  const file = join(folder, documentName)
  if (!existsSync(file)) {
    return failure([
      {
        code: 'store/no-job',
        at: folder,
        say: `There is no ${documentName} in ${folder}. Make one with: dawnlift new NAME`,
      },
    ])
  }
  const root = realpathSync(folder)
  const read = () => {
    const text = readFileSync(file, 'utf8')
    return { text, revision: revisionOf(text) }
  }
  const beside = () =>
    readdirSync(folder, { withFileTypes: true })
      .filter(entry => entry.isFile() && entry.name !== documentName && !entry.name.startsWith('.'))
      .map(entry => entry.name)
      .sort()
  return success({
    folder,
    id: revisionOf(root),
    read,
    save: (text, restsOn) => {
      const now = read()
      if (restsOn !== undefined && restsOn !== now.revision) return failure([conflict(restsOn, now.revision)])
      if (text === now.text) return success(now)
      keepRevision(folder, now)
      writeWhole(file, text)
      return success({ text, revision: revisionOf(text) })
    },
    stamp: () =>
      [read().revision, ...beside().map(name => `${name} ${statSync(join(folder, name)).mtimeMs}`)].join(
        '\n',
      ),
    beside,
    readBeside: name => {
      const path = inside(root, name)
      return path && statSync(path).isFile() && statSync(path).size <= largestFile
        ? readFileSync(path)
        : undefined
    },
    addToLog: lines => {
      const path = join(root, logFile)
      const wrong = lines.find(line => !isLogLine(line))
      if (wrong !== undefined) return failure([noLogLine(wrong)])
      const known = existsSync(path) ? readFileSync(path, 'utf8') : ''
      const added = addedLines(known, lines)
      // Flushed, so that the line is there when the generator fails in the next second.
      if (added !== '') appendFileSync(path, added, { flush: true })
      return success(known + added)
    },
    addBeside: (name, content) => {
      if (!mayStandBeside(name)) {
        return failure([
          {
            code: 'store/file-name',
            at: name,
            say: `“${name}” cannot stand beside the job: a plain file name without folders is needed.`,
          },
        ])
      }
      writeWhole(join(root, name), content)
      return success(undefined)
    },
    removeBeside: name => {
      if (!mayStandBeside(name) || !beside().includes(name)) return false
      const shelf = join(folder, '.dawnlift', 'removed')
      mkdirSync(shelf, { recursive: true })
      renameSync(join(root, name), join(shelf, `${randomBytes(4).toString('hex')}-${name}`))
      return true
    },
  })
}

const mayStandBeside = (name: string): boolean =>
  name === basename(name) && !name.startsWith('.') && name !== documentName

/** Written aside, then renamed: a pulled plug leaves the old text or the new one, never half of one. */
function writeWhole(file: string, content: string | Uint8Array): void {
  const aside = `${file}.${randomBytes(4).toString('hex')}.part`
  writeFileSync(aside, content, { flush: true })
  renameSync(aside, file)
}

function keepRevision(folder: string, document: StoredDocument): void {
  const shelf = join(folder, '.dawnlift', 'revisions')
  mkdirSync(shelf, { recursive: true })
  const number = String(readdirSync(shelf).filter(name => name.endsWith('.yaml')).length + 1).padStart(6, '0')
  writeWhole(join(shelf, `${number}-${document.revision}.yaml`), document.text)
}

function inside(root: string, name: string): string | undefined {
  const path = join(root, name)
  if (!existsSync(path)) return undefined
  const way = relative(root, realpathSync(path))
  return way.startsWith('..') || way.split(sep).some(part => part.startsWith('.')) ? undefined : path
}

const noLogLine = (line: string) => ({
  code: 'store/log-line',
  at: logFile,
  say: `“${line.slice(0, 120)}” is no line of a site log; one looks like {"at":"2026-07-06 07:13","what":"layer","section":"A","layer":15}. Nothing was added.`,
})

const conflict = (restsOn: string, now: string) => ({
  code: 'store/changed-elsewhere',
  at: documentName,
  say: `The job was changed elsewhere since you opened it (yours rests on ${restsOn}, on disk stands ${now}). Load it again, or save yours under another name.`,
})
