import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { brotliDecompressSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { root } from '../sources.js'

/** The packed browser brings a font along: the same letters on every machine, whatever is installed there. */
const packed = join(root, 'node_modules/@sparticuz/chromium/bin/fonts.tar.br')
const block = 512

/** A file of a tar archive, by the end of its name. */
function fileIn(archive: Buffer, name: string): Buffer {
  for (let at = 0; at < archive.length; ) {
    const found = archive.toString('utf8', at, at + 100).replace(/\0.*$/s, '')
    const size = Number.parseInt(archive.toString('utf8', at + 124, at + 135), 8) || 0
    if (found.endsWith(name)) return archive.subarray(at + block, at + block + size)
    at += block + Math.ceil(size / block) * block
  }
  throw new Error(`${name} is not among the packed fonts`)
}

let style: string | undefined

/** Everything on the page in that font, and nothing that moves or blinks. */
export async function letterIn(page: Page): Promise<void> {
  style ??= styleText()
  await page.addInitScript(text => {
    addEventListener('DOMContentLoaded', () => {
      const element = document.createElement('style')
      element.textContent = text
      document.head.append(element)
    })
  }, style)
}

function styleText(): string {
  const archive = brotliDecompressSync(readFileSync(packed))
  const face = (name: string, weight: string) =>
    `@font-face { font-family: Golden; font-weight: ${weight}; src: url(data:font/ttf;base64,${fileIn(archive, name).toString('base64')}) }`
  return [
    face('OpenSans-Regular.ttf', '100 500'),
    face('OpenSans-Bold.ttf', '501 900'),
    '*, svg text { font-family: Golden !important }',
    '* { caret-color: transparent !important; transition: none !important; animation: none !important }',
    // Solids are drawn by whatever draws them here; they have a test of their own.
    '[data-testid="solid"] canvas { visibility: hidden }',
  ].join('\n')
}
