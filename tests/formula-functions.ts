import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import ts from 'typescript'
import { root } from './sources.js'

/** A function that some `formulas.ts` hands to the registry, with the words above it. */
export interface FormulaFunction {
  readonly name: string
  /** Path from the root of the file that defines it. */
  readonly path: string
  readonly doc: string
  readonly parameters: readonly FormulaParameter[]
}

export interface FormulaParameter {
  readonly name: string
  readonly type: string
  /** Where the type is one of ours: its number fields, each with the words beside it. */
  readonly fields: readonly { readonly name: string; readonly type: string; readonly doc: string }[]
}

const core = join(root, 'packages/core/src')

/** The sheets of formulas: `formulas.ts` of each domain and what weather divides it into. */
export const formulaSheets: readonly string[] = readdirSync(core)
  .flatMap(domain => readdirSync(join(core, domain)).map(name => join(core, domain, name)))
  .filter(path => path.endsWith('formulas.ts'))

/** Every function imported by a sheet of formulas and called in one of its `calculate`s. */
export const formulaFunctions = (): readonly FormulaFunction[] =>
  formulaSheets.flatMap(sheet => {
    const source = parse(sheet)
    const called = namesCalled(source)
    return importsFrom(source)
      .filter(each => called.has(each.name) && each.from !== './formula-inputs.js')
      .flatMap(each => definition(join(dirname(sheet), each.from.replace(/\.js$/, '.ts')), each.name))
  })

function definition(path: string, name: string): readonly FormulaFunction[] {
  const source = parse(path)
  const home = source.statements.flatMap(reExports).find(each => each.name === name)
  if (home) return definition(join(dirname(path), home.from.replace(/\.js$/, '.ts')), name)
  const statement = source.statements.find(each => definesFunction(each, name))
  if (!statement) return []
  return [
    {
      name,
      path: path.slice(root.length),
      doc: docOf(statement, source),
      parameters: parametersOf(statement).map(each => ({
        name: each.name.getText(source),
        type: each.type?.getText(source) ?? '',
        fields: fieldsOf(each.type, path),
      })),
    },
  ]
}

function definesFunction(statement: ts.Statement, name: string): boolean {
  if (ts.isFunctionDeclaration(statement)) return statement.name?.text === name
  return (
    ts.isVariableStatement(statement) &&
    statement.declarationList.declarations.some(
      each => each.name.getText() === name && each.initializer && ts.isArrowFunction(each.initializer),
    )
  )
}

function parametersOf(statement: ts.Statement): readonly ts.ParameterDeclaration[] {
  if (ts.isFunctionDeclaration(statement)) return statement.parameters
  if (!ts.isVariableStatement(statement)) return []
  return statement.declarationList.declarations.flatMap(each =>
    each.initializer && ts.isArrowFunction(each.initializer) ? [...each.initializer.parameters] : [],
  )
}

/** The fields of an interface that stands in the same file or is imported from one beside it. */
function fieldsOf(type: ts.TypeNode | undefined, path: string): FormulaParameter['fields'] {
  if (!type || !ts.isTypeReferenceNode(type)) return []
  const name = type.typeName.getText()
  const source = parse(path)
  const found = source.statements.find(each => ts.isInterfaceDeclaration(each) && each.name.text === name)
  if (found && ts.isInterfaceDeclaration(found))
    return found.members.filter(ts.isPropertySignature).map(member => ({
      name: member.name.getText(source),
      type: member.type?.getText(source) ?? '',
      doc: `${docOf(found, source)} ${docOf(member, source)}`,
    }))
  const home = importsFrom(source, true).find(each => each.name === name && each.from.startsWith('./'))
  return home ? fieldsOf(type, join(dirname(path), home.from.replace(/\.js$/, '.ts'))) : []
}

function docOf(node: ts.Node, source: ts.SourceFile): string {
  const comments = ts.getLeadingCommentRanges(source.text, node.pos) ?? []
  const trailing = ts.getTrailingCommentRanges(source.text, node.end) ?? []
  const own = comments
    .map(each => source.text.slice(each.pos, each.end))
    .filter(each => each.startsWith('/**'))
  return [own.at(-1) ?? '', ...trailing.map(each => source.text.slice(each.pos, each.end))].join(' ')
}

interface Imported {
  readonly name: string
  readonly from: string
}

function importsFrom(source: ts.SourceFile, types = false): readonly Imported[] {
  return source.statements.filter(ts.isImportDeclaration).flatMap(each => {
    const names = each.importClause?.namedBindings
    if (!names || !ts.isNamedImports(names) || !ts.isStringLiteral(each.moduleSpecifier)) return []
    const from = each.moduleSpecifier.text
    const wholeType = each.importClause?.isTypeOnly === true
    return names.elements
      .filter(element => types || !(wholeType || element.isTypeOnly))
      .map(element => ({ name: (element.propertyName ?? element.name).text, from }))
  })
}

const reExports = (statement: ts.Statement): readonly Imported[] =>
  ts.isExportDeclaration(statement) &&
  statement.exportClause &&
  ts.isNamedExports(statement.exportClause) &&
  statement.moduleSpecifier &&
  ts.isStringLiteral(statement.moduleSpecifier)
    ? statement.exportClause.elements.map(each => ({
        name: each.name.text,
        from: (statement.moduleSpecifier as ts.StringLiteral).text,
      }))
    : []

function namesCalled(source: ts.SourceFile): ReadonlySet<string> {
  const names = new Set<string>()
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && ts.isIdentifier(node.expression)) names.add(node.expression.text)
    node.forEachChild(visit)
  }
  visit(source)
  return names
}

const parsed = new Map<string, ts.SourceFile>()
function parse(path: string): ts.SourceFile {
  const kept = parsed.get(path)
  if (kept) return kept
  const source = ts.createSourceFile(path, readFileSync(path, 'utf8'), ts.ScriptTarget.Latest, true)
  parsed.set(path, source)
  return source
}
