import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { expect, it } from 'vitest'
import { english } from './english.js'
import { englishChoices } from './english-choices.js'
import { englishDays } from './english-days.js'
import { englishLog } from './english-log.js'
import { englishMixSite } from './english-mix-site.js'
import { englishPlaces } from './english-places.js'
import { englishTradesTally } from './english-trades-tally.js'
import { words } from './index.js'

const source = fileURLToPath(new URL('..', import.meta.url))

it('no two lists of sentences have a name in common: one would hide the other', () => {
  const lists = [
    english,
    englishPlaces,
    englishChoices,
    englishDays,
    englishLog,
    englishTradesTally,
    englishMixSite,
  ]
  expect(lists.flatMap(list => Object.keys(list)).sort()).toEqual(Object.keys(words).sort())
})

/** Attributes that are read or heard. */
const heard = new Set(['aria-label', 'label', 'title', 'what', 'placeholder', 'description'])

it('every sentence of the app stands among the words, none in a component', () => {
  const files = readdirSync(source, { recursive: true, encoding: 'utf8' }).filter(name =>
    name.endsWith('.tsx'),
  )
  expect(files.length).toBeGreaterThan(40)
  expect(files.flatMap(name => sentencesIn(name, readFileSync(join(source, name), 'utf8')))).toEqual([])
  expect(sentencesIn('a.tsx', '<p title="a lift">So it stands.</p>')).toHaveLength(2)
})

function sentencesIn(name: string, text: string): readonly string[] {
  const found: string[] = []
  const look = (node: ts.Node): void => {
    if (ts.isJsxText(node) && /[A-Za-z]{2}/.test(node.text)) found.push(`${name}: ${node.text.trim()}`)
    if (ts.isJsxAttribute(node) && heard.has(node.name.getText()) && speaks(node.initializer))
      found.push(`${name}: ${node.getText()}`)
    ts.forEachChild(node, look)
  }
  look(ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true, ts.ScriptKind.TSX))
  return found
}

/** Written out on the spot: a text, or a template with words of its own. */
function speaks(value: ts.JsxAttributeValue | undefined): boolean {
  if (!value) return false
  if (ts.isStringLiteral(value)) return /[A-Za-z]{2}/.test(value.text)
  if (!ts.isJsxExpression(value) || !value.expression || !ts.isTemplateExpression(value.expression))
    return false
  const { head, templateSpans } = value.expression
  return [head.text, ...templateSpans.map(span => span.literal.text)].some(text => /[A-Za-z]{3}/.test(text))
}
