const signs: Readonly<Record<string, string>> = { c: 'Ø', d: '°', p: '±', '%': '%' }

/** Plain text of a TEXT or ATTRIB: `%%c` Ø, `%%d` °, `%%p` ±, `%%nnn`, `\U+XXXX`; underline and overline marks go. */
export const plainText = (text: string): string =>
  text
    .replace(/%%(\d{3})/g, (_, code: string) => String.fromCharCode(Number(code)))
    .replace(/%%([cdp%])/gi, (_, sign: string) => signs[sign.toLowerCase()] ?? '')
    .replace(/%%[uok]/gi, '')
    .replace(/\\U\+([0-9a-f]{4})/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    .trim()

/** Plain text of an MTEXT: formatting is dropped, `\P` is a new line, a stacked fraction is written `1/2`. */
export const plainMultilineText = (text: string): string =>
  plainText(
    text
      .replace(/\\\\/g, '\u0001')
      .replace(/\\([{}])/g, (_, brace: string) => (brace === '{' ? '\u0002' : '\u0003'))
      .replace(/\\U\+([0-9a-f]{4})/gi, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
      .replace(
        /\\S([^;^/#]*)[\^/#]([^;]*);/g,
        (_, over: string, under: string) => `${over.trim()}/${under.trim()}`,
      )
      .replace(/\\[ACcFfHQTWp][^;\\{}]*;/g, '')
      .replace(/\\P/g, '\n')
      .replace(/\\~/g, ' ')
      .replace(/\\[LlOoKk]/g, '')
      .replace(/[{}]/g, ''),
  )
    .replaceAll('\u0001', '\\')
    .replaceAll('\u0002', '{')
    .replaceAll('\u0003', '}')
