import type { Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'

/** A drawing larger than this is refused: a plan of walls is a thousandth of it. */
export const MOST_BYTES = 64_000_000

const beginsWith = (bytes: Uint8Array, text: string): boolean =>
  bytes.length >= text.length && [...text].every((letter, index) => bytes[index] === letter.charCodeAt(0))

/** The drawing as text. Binary drawings and other files are told apart and refused in words. */
export function dxfText(input: Uint8Array | string, fileName: string): Result<string> {
  const refuse = (code: string, say: string) => failure([{ code: `dxf/${code}`, at: fileName, say }])
  if (input.length > MOST_BYTES)
    return refuse(
      'too-large',
      `The drawing has ${Math.round(input.length / 1e6)} MB; at most ${MOST_BYTES / 1e6} MB are read. Save only the wall plan.`,
    )
  if (typeof input === 'string')
    return input.trim() === ''
      ? refuse(
          'empty',
          'The drawing is empty; it needs at least one line. Save it again as ASCII DXF, or name another file.',
        )
      : success(input)
  if (input.length === 0)
    return refuse(
      'empty',
      'The drawing is empty; it needs at least one line. Save it again as ASCII DXF, or name another file.',
    )
  if (beginsWith(input, 'AutoCAD Binary DXF'))
    return refuse(
      'binary',
      'This is a binary DXF; only ASCII DXF is read. Save the drawing as ASCII DXF, R12 to 2018.',
    )
  if (beginsWith(input, 'AC10'))
    return refuse('dwg', 'This is a DWG drawing under a DXF name. Save it as ASCII DXF, R12 to 2018.')
  if (input.subarray(0, 4096).includes(0))
    return refuse(
      'not-text',
      'This is not a text file, so it is no ASCII DXF. Save the drawing as ASCII DXF, R12 to 2018.',
    )
  return success(new TextDecoder(encodingOf(input)).decode(input))
}

/** UTF-8 from version AC1021 (2007) on; before it the code page the drawing names. */
function encodingOf(bytes: Uint8Array): string {
  const head = new TextDecoder('latin1').decode(bytes.subarray(0, 20_000))
  const version = /\$ACADVER\s+1\s+AC(\d{4})/.exec(head)?.[1]
  if (version === undefined || Number(version) >= 1021) return validUtf8(bytes) ? 'utf-8' : 'windows-1252'
  const page = /\$DWGCODEPAGE\s+3\s+(\S+)/.exec(head)?.[1]?.toUpperCase() ?? 'ANSI_1252'
  const asian: Readonly<Record<string, string>> = {
    ANSI_932: 'shift_jis',
    ANSI_936: 'gbk',
    ANSI_949: 'euc-kr',
    ANSI_950: 'big5',
  }
  const known = asian[page] ?? (/^ANSI_125\d$/.test(page) ? page.replace('ANSI_', 'windows-') : undefined)
  return known ?? 'windows-1252'
}

function validUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    return true
  } catch {
    return false
  }
}
