import {
  type Document,
  isCollection,
  isMap,
  isNode,
  isPair,
  isScalar,
  isSeq,
  type Node,
  parseDocument,
  stringify,
} from 'yaml'
import type { JobEdit } from './edit-job.js'

type Path = readonly (string | number)[]

/** The text with one edit cut into it; nothing where only a rewrite of the document will do. */
export function spliced(text: string, document: Document, edit: JobEdit): string | undefined {
  const node = nodeAt(document, edit.path)
  if (edit.kind === 'remove') return without(text, document, edit.path)
  if (node) return replaced(text, node, edit.value)
  return inserted(text, document, edit.path, edit.value)
}

/** The text with the key at a path under another name, its value and comments untouched. */
export function renamedKey(text: string, path: Path, name: string): string {
  const home = nodeAt(parseDocument(text), path.slice(0, -1))
  if (!isMap(home) || home.has(name)) return text
  const key = home.items.find(item => String(item.key) === String(path.at(-1)))?.key
  if (!isNode(key) || !key.range) return text
  return text.slice(0, key.range[0]) + inline(name) + text.slice(key.range[1])
}

function nodeAt(document: Document, path: Path): Node | undefined {
  const found: unknown = path.length === 0 ? document.contents : document.getIn(path, true)
  return isNode(found) && found.range ? found : undefined
}

/** A value on one line, quoted so that it may stand inside brackets too. */
function inline(value: unknown): string {
  const list = stringify([value], { collectionStyle: 'flow', lineWidth: 0 }).trim()
  return list.slice(1, -1).trim()
}

function replaced(text: string, node: Node, value: unknown): string | undefined {
  const plain = isScalar(node)
    ? node.type !== 'BLOCK_FOLDED' && node.type !== 'BLOCK_LITERAL'
    : isCollection(node) && node.flow
  const [from, to] = node.range ?? [0, 0]
  if (!plain || node.anchor || from === to) return undefined
  return text.slice(0, from) + inline(value) + text.slice(to)
}

/** A new key or list entry behind the last one of the nearest block that is there. */
function inserted(text: string, document: Document, path: Path, value: unknown): string | undefined {
  let depth = path.length - 1
  while (depth > 0 && !nodeAt(document, path.slice(0, depth))) depth -= 1
  const home = nodeAt(document, path.slice(0, depth))
  const rest = path
    .slice(depth + 1)
    .reduceRight<unknown>((inner, key) => (typeof key === 'number' ? [inner] : { [key]: inner }), value)
  const key = path[depth]
  if (!isCollection(home) || (isSeq(home) && key !== home.items.length)) return undefined
  const entry = isMap(home) ? `${inline(String(key))}: ${inline(rest)}` : inline(rest)
  if (home.flow && home.items.length === 0) {
    const open = home.range?.[0] ?? 0
    return `${text.slice(0, open + 1)} ${entry} ${text.slice(open + 1).trimStart()}`
  }
  const end = endOfItem(home.items.at(-1))
  if (end === undefined) return undefined
  if (home.flow) return `${text.slice(0, end)}, ${entry}${text.slice(end)}`
  const line = lineEnd(text, end)
  const start = startOfItem(home.items[0], isSeq(home), text)
  if (start === undefined) return undefined
  const indent = ' '.repeat(start - lineStart(text, start))
  const written = isMap(home) ? (inLines(String(key), rest, indent) ?? entry) : `- ${entry}`
  return `${text.slice(0, line)}\n${indent}${written}${text.slice(line)}`
}

/** Most keys of a block that still reads well on one line. */
const ONE_LINE = 2

/** A new list of things a line each, or a larger block a line a key, so that later edits show as lines; else nothing. */
function inLines(key: string, value: unknown, indent: string): string | undefined {
  const below = (lines: readonly string[]) =>
    [`${inline(key)}:`, ...lines.map(line => `${indent}  ${line}`)].join('\n')
  if (Array.isArray(value))
    return value.some(isBlock) ? below(value.map(each => `- ${inline(each)}`)) : undefined
  if (!isBlock(value) || Object.keys(value).length <= ONE_LINE) return undefined
  return below(
    Object.entries(value).map(
      ([name, each]) => inLines(name, each, `${indent}  `) ?? `${inline(name)}: ${inline(each)}`,
    ),
  )
}

const isBlock = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

function without(text: string, document: Document, path: Path): string | undefined {
  const home = nodeAt(document, path.slice(0, -1))
  if (!isCollection(home) || home.items.length < 2) return undefined
  const key = path.at(-1)
  const index = isMap(home) ? home.items.findIndex(item => String(item.key) === String(key)) : Number(key)
  const [item, before, after] = [home.items[index], home.items[index - 1], home.items[index + 1]]
  const [start, end] = [startOfItem(item, isSeq(home) && !home.flow, text), endOfItem(item)]
  if (start === undefined || end === undefined) return undefined
  if (!home.flow) {
    const from = lineStart(text, start)
    // A first key that shares its line with a list's dash cannot go without the dash.
    return text.slice(from, start).trim() === ''
      ? text.slice(0, from) + text.slice(lineEnd(text, end) + 1)
      : undefined
  }
  const beforeEnd = endOfItem(before)
  const next = startOfItem(after, false, text)
  if (beforeEnd !== undefined) return text.slice(0, beforeEnd) + text.slice(end)
  return next === undefined ? undefined : text.slice(0, start) + text.slice(next)
}

/** Where an entry starts: its key, or its dash. */
function startOfItem(item: unknown, dashed: boolean, text: string): number | undefined {
  const first = isPair(item) ? item.key : item
  const start = isNode(first) ? first.range?.[0] : undefined
  return start !== undefined && dashed ? text.lastIndexOf('-', start - 1) : start
}

/** Where the last written character of an entry stands, comments not counted. */
function endOfItem(item: unknown): number | undefined {
  const last = isPair(item) ? (item.value ?? item.key) : item
  if (isCollection(last) && !last.flow && last.items.length > 0) return endOfItem(last.items.at(-1))
  return isNode(last) ? last.range?.[1] : undefined
}

const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1

function lineEnd(text: string, at: number): number {
  const end = text.indexOf('\n', at)
  return end < 0 ? text.length : end
}
