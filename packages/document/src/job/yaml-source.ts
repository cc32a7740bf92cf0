import type { Problem, Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'
import { type Document, isMap, isNode, LineCounter, parseDocument } from 'yaml'

/** A document as text and as plain data, with a way back from a path to its line. */
export interface YamlSource {
  readonly document: Document
  readonly raw: unknown
  /** `job.yaml:41:9 walls[3].thickness` */
  readonly place: (path: readonly PropertyKey[]) => string
  /** The same, at the key instead of its value. */
  readonly placeKey: (path: readonly PropertyKey[]) => string
}

const MOST_CHARACTERS = 5_000_000
/** Anchors may save typing; a document that unfolds beyond this is an attack or an accident. */
const MOST_ALIASES = 200

/** Reads YAML 1.2 into plain data; every error comes with its line and column. */
export function readYaml(text: string, fileName: string): Result<YamlSource> {
  if (text.length > MOST_CHARACTERS)
    return failure([
      {
        code: 'job/too-large',
        at: fileName,
        say: `The document has ${text.length} characters; at most ${MOST_CHARACTERS} are read. Keep geometry in the drawing.`,
      },
    ])
  const lineCounter = new LineCounter()
  const document = parseDocument(text, { lineCounter, prettyErrors: false, uniqueKeys: true, version: '1.2' })
  const faults = [...document.errors, ...document.warnings]
  if (faults.length > 0) return failure(faults.map(fault => yamlProblem(fault, lineCounter, fileName)))
  try {
    const raw: unknown = document.toJS({ maxAliasCount: MOST_ALIASES })
    return success({
      document,
      raw,
      place: path => place(document, lineCounter, fileName, path),
      placeKey: path => placeKey(document, lineCounter, fileName, path),
    })
  } catch (error) {
    // The library throws only on aliases: too many, or pointing nowhere.
    const why = error instanceof Error ? error.message : String(error)
    return failure([
      {
        code: 'job/yaml-alias',
        at: fileName,
        say: `The document unfolds too far: ${why}. Write the values out.`,
      },
    ])
  }
}

function yamlProblem(
  fault: { readonly code: string; readonly message: string; readonly pos: readonly [number, number] },
  lines: LineCounter,
  fileName: string,
): Problem {
  const { line, col } = lines.linePos(fault.pos[0])
  return {
    code: 'job/yaml',
    at: `${fileName}:${line}:${col}`,
    say: `This is not valid YAML: ${fault.message.split('\n')[0]}. Check indentation, quotes and brackets here.`,
    values: { line, column: col, fault: fault.code },
  }
}

function place(
  document: Document,
  lines: LineCounter,
  fileName: string,
  path: readonly PropertyKey[],
): string {
  for (let depth = path.length; depth >= 0; depth--) {
    const node: unknown = depth === 0 ? document.contents : document.getIn(path.slice(0, depth), true)
    if (!isNode(node) || !node.range) continue
    const { line, col } = lines.linePos(node.range[0])
    return `${fileName}:${line}:${col} ${pathText(path)}`.trim()
  }
  return `${fileName} ${pathText(path)}`.trim()
}

function placeKey(
  document: Document,
  lines: LineCounter,
  fileName: string,
  path: readonly PropertyKey[],
): string {
  const block: unknown = path.length < 2 ? document.contents : document.getIn(path.slice(0, -1), true)
  const pair = isMap(block) ? block.items.find(item => String(item.key) === String(path.at(-1))) : undefined
  if (!isNode(pair?.key) || !pair.key.range) return place(document, lines, fileName, path)
  const { line, col } = lines.linePos(pair.key.range[0])
  return `${fileName}:${line}:${col} ${pathText(path)}`
}

/** `walls[3].thickness` */
export const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (text, key) =>
      typeof key === 'number' ? `${text}[${key}]` : `${text}${text === '' ? '' : '.'}${String(key)}`,
    '',
  )
