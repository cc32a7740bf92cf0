/**
 * The same call of the same job has the same UID in every plan, so that a calendar program moves the entry instead of
 * doubling it. The job's part is a 64-bit FNV-1a hash of its key; the call's part stays readable.
 */
export const callUid = (jobKey: string, callId: string): string =>
  `${callId.replaceAll(/[^A-Za-z0-9_-]/g, letter => `.${letter.codePointAt(0)?.toString(16)}.`)}-${hash(jobKey)}@dawnlift`

function hash(text: string): string {
  let value = 0xcbf29ce484222325n
  for (const byte of new TextEncoder().encode(text.normalize('NFC')))
    value = ((value ^ BigInt(byte)) * 0x100000001b3n) & 0xffffffffffffffffn
  return value.toString(16).padStart(16, '0')
}
