import type { Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'

/** What a first look over the pairs of code and value tells. */
export interface GroupSurvey {
  /** Entities of model and paper space by kind. */
  readonly entities: Readonly<Record<string, number>>
  /** Only the sections a plan is in: header, blocks and entities. */
  readonly kept: string
}

const sectionsKnown = /^(HEADER|CLASSES|TABLES|BLOCKS|ENTITIES|OBJECTS|THUMBNAILIMAGE|ACDSDATA)$/
const keptSections = new Set(['HEADER', 'BLOCKS', 'ENTITIES'])
/** Parts of other entities, counted with them. */
const partsOf = new Set(['VERTEX', 'SEQEND', 'ATTRIB', 'ENDSEC', 'SECTION', 'EOF'])

/** Walks the file in pairs: a number, then a value. Says at which line that order breaks. */
export function surveyGroups(text: string, fileName: string): Result<GroupSurvey> {
  const lines = text.split(/\r\n|\r|\n/)
  const entities: Record<string, number> = {}
  let section = ''
  let ended = false
  let sectionStart = 0
  const kept: string[] = []
  let sections = 0
  for (let line = 0; line + 1 < lines.length && !ended; line += 2) {
    const code = lines[line]!.trim()
    const value = lines[line + 1]!.trim()
    if (!/^-?\d{1,5}$/.test(code)) return broken(fileName, line, code, sections)
    if (code === '2' && lines[line - 1]?.trim() === 'SECTION' && sectionsKnown.test(value)) {
      section = value
      sectionStart = line - 2
      sections += 1
    }
    if (code !== '0') continue
    if (value === 'EOF') ended = true
    if (section === 'ENTITIES' && !partsOf.has(value)) entities[value] = (entities[value] ?? 0) + 1
    if (value === 'ENDSEC') {
      if (keptSections.has(section)) kept.push(...lines.slice(sectionStart, line + 2))
      section = ''
    }
  }
  if (sections === 0)
    return failure([
      {
        code: 'dxf/not-dxf',
        at: fileName,
        say: 'This is not a DXF drawing: it has no section. Save the drawing as ASCII DXF.',
      },
    ])
  if (!ended)
    return failure([
      {
        code: 'dxf/truncated',
        at: `${fileName}:${lines.length}`,
        say: `The drawing ends at line ${lines.length}${section ? ` inside its ${section} section` : ''}, before its end mark: it was cut off. Save or copy it again.`,
        values: { line: lines.length },
      },
    ])
  return success({ entities, kept: [...kept, '0', 'EOF', ''].join('\n') })
}

function broken(fileName: string, line: number, found: string, sections: number): Result<never> {
  const what = sections === 0 ? 'This is not a DXF drawing' : 'The drawing is damaged'
  return failure([
    {
      code: sections === 0 ? 'dxf/not-dxf' : 'dxf/damaged',
      at: `${fileName}:${line + 1}`,
      say: `${what}: line ${line + 1} holds “${found.slice(0, 40)}” where a group code (a whole number) belongs. Save it as ASCII DXF.`,
      values: { line: line + 1 },
    },
  ])
}
