import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { assert } from '@dawnlift/core/result'
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler'

/** Beside `src` and `dist` alike. */
export const templateFolder = fileURLToPath(new URL('../../templates', import.meta.url))

let compiler: NodeCompiler | undefined

/**
 * A template with its data as a PDF. Letters come from the two faces the compiler carries (Libertinus Serif, DejaVu Sans
 * Mono: Latin, Greek, Cyrillic, Hebrew, Arabic), so that a page looks the same on every machine; its bytes may differ
 * where the machine has its own copy of one of them. Other scripts, and drawing lines that mix Hebrew with Arabic, take
 * what the machine has.
 */
export function typeset(template: string, data: unknown): Uint8Array {
  assert(existsSync(`${templateFolder}/${template}.typ`), `template ${template} is shipped`)
  compiler ??= NodeCompiler.create({ workspace: templateFolder })
  const pdf = compiler.pdf({
    mainFilePath: `${templateFolder}/${template}.typ`,
    inputs: { data: JSON.stringify(data) },
    resetRead: true,
  })
  compiler.evictCache(2)
  return new Uint8Array(pdf)
}
